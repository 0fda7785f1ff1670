/** Lights, spectra and curves of reflectance. */
import { describe, expect, test } from 'vitest';
import { BANDS, bandLight, lineLight, spectrumLight, type BandName } from '../../../engine/film/light.ts';
import { filmOptics, type MirrorFilm } from '../../../engine/film/mirrorFilm.ts';
import { litFilm, readCurveInto, reflectanceCurve } from '../../../engine/film/reflectanceCurve.ts';
import { blackBody, readSpectrumCsv } from '../../../engine/film/spectrum.ts';
import { integrate } from '../../support/quadrature.ts';
import { filmOf } from './films.ts';

/** Sums of a few dozen weights. */
const ROUNDING = 1e-12;
/** Four Gauss points a panel across the corners of a table that is linear between its rows. */
const KINKS = 1e-4;

const film = filmOf();

describe('a light', () => {
  test.each([
    ['a line', lineLight(550e-9)],
    ...(Object.keys(BANDS) as BandName[]).map((name) => [name, bandLight(BANDS[name])] as const),
    ['V of the sun', bandLight(BANDS.V, blackBody(5772))],
    ['a lamp', spectrumLight(blackBody(2856), 0.4e-6, 0.8e-6)],
  ] as const)('%s weighs 1 in all and nothing below zero', (_name, { weight }) => {
    expect(Math.abs(weight.reduce((sum, value) => sum + value, 0) - 1)).toBeLessThan(ROUNDING);
    for (const value of weight) expect(value).toBeGreaterThanOrEqual(0);
  });

  test.each(Object.keys(BANDS) as BandName[])('the band %s has its centre and its width', (name) => {
    const { center, width } = BANDS[name];
    const { wavelength, weight } = bandLight(BANDS[name]);
    const mean = wavelength.reduce((sum, at, i) => sum + weight[i]! * at, 0);
    const spread = wavelength.reduce((sum, at, i) => sum + weight[i]! * (at - mean) ** 2, 0);
    expect(Math.abs(mean / center - 1)).toBeLessThan(ROUNDING);
    // variance of a trapezoid with base a = 1.5 w and top b = 0.5 w: (a² + b²)/24
    expect(Math.abs(spread / ((width * width * 2.5) / 24) - 1)).toBeLessThan(1e-9);
    expect(Math.min(...wavelength)).toBeGreaterThan(center - 0.75 * width);
    expect(Math.max(...wavelength)).toBeLessThan(center + 0.75 * width);
  });

  test('a red lamp pulls a band to the red', () => {
    const mean = ({ wavelength, weight }: ReturnType<typeof bandLight>): number =>
      wavelength.reduce((sum, at, i) => sum + weight[i]! * at, 0);
    expect(mean(bandLight(BANDS.R, blackBody(3000)))).toBeGreaterThan(mean(bandLight(BANDS.R)));
    expect(mean(bandLight(BANDS.R, blackBody(20_000)))).toBeLessThan(mean(bandLight(BANDS.R)));
  });

  test('a black body peaks where Wien says', () => {
    // Wien's constant 2.897771955e-3 m K, CODATA 2018
    const { power } = blackBody(5772);
    const peak = 2.897771955e-3 / 5772;
    expect(power(peak)).toBeGreaterThan(power(peak * 1.0001));
    expect(power(peak)).toBeGreaterThan(power(peak * 0.9999));
  });

  test('a black body that is not warm is refused', () => {
    expect(() => blackBody(0)).toThrow(RangeError);
  });

  test('a spectrum that ends inside a band is refused, one that meets no wavelength too', () => {
    const read = readSpectrumCsv('wavelength,power\nnm,\n500,1\n560,2\n', 'short lamp');
    if (!read.ok) throw new Error(read.messages.join('\n'));
    expect(() => bandLight(BANDS.V, read.spectrum)).toThrow('short lamp does not cover the band V');
    expect(() => spectrumLight(read.spectrum, 0.7e-6, 0.9e-6)).toThrow('short lamp has no light');
    const light = spectrumLight(read.spectrum, 0.2e-6, 2e-6);
    const mean = light.wavelength.reduce((sum, at, i) => sum + light.weight[i]! * at, 0);
    // centroid of power 1 to 2 over 500 to 560 nm: 500 + 60·5/9
    expect(Math.abs(mean / ((500 + 300 / 9) * 1e-9) - 1)).toBeLessThan(1e-9);
  });

  test.each([
    ['wavelength,power\nnm,\n500,-1\n560,2\n', 'row 3, column power: expected a number of zero or more; found "-1"'],
    ['wavelength,power\nnm,\n500,0\n560,0\n', 'column power: expected at least one number greater than zero'],
  ])('a broken spectrum is refused: %j', (text, message) => {
    const read = readSpectrumCsv(text, 'lamp');
    expect(read.ok ? [] : read.messages).toEqual([message]);
  });
});

describe('a film under a light', () => {
  test('of one wavelength is the film at that wavelength', () => {
    const lit = litFilm(film, lineLight(633e-9), Math.sin(0.4));
    const { mean } = filmOptics(film, 37e-9, 633e-9, 0.4);
    expect(Math.abs(lit.reflected(37e-9) - mean.reflected)).toBeLessThan(ROUNDING);
    expect(Math.abs(lit.transmitted(37e-9) - mean.transmitted)).toBeLessThan(ROUNDING);
  });

  test.each(Object.keys(BANDS) as BandName[])('of the band %s is the average over the band', (name) => {
    const { center, width } = BANDS[name];
    const response = (at: number): number => Math.min(1, (0.75 * width - Math.abs(at - center)) / (0.5 * width));
    const edges = Array.from({ length: 61 }, (_, i) => center + ((i - 30) / 40) * width);
    const total = integrate(response, edges, 4);
    const exact = integrate((at) => response(at) * filmOptics(film, 60e-9, at).mean.reflected, edges, 4) / total;
    expect(Math.abs(litFilm(film, bandLight(BANDS[name])).reflected(60e-9) - exact)).toBeLessThan(KINKS);
  });

  test('tends to the opaque reflectance', () => {
    const lit = litFilm(film, bandLight(BANDS.B));
    expect(Math.abs(lit.reflected(1e-6) - lit.opaqueReflected)).toBeLessThan(ROUNDING);
  });

  test('beyond an index table is refused', () => {
    const ceramic: MirrorFilm = filmOf({ substrate: 'glass ceramic' });
    expect(() => litFilm(ceramic, lineLight(300e-9))).toThrow('the index of glass ceramic is known from 0.365');
  });
});

describe('a curve of reflectance', () => {
  test.each([
    [0, 300e-9],
    [0, 20e-9],
    [70e-9, 140e-9],
    [95e-9, 95e-9],
  ])('over %d to %d m keeps its stated error, and that is small', (low, high) => {
    const { reflected } = litFilm(film, lineLight(550e-9));
    const curve = reflectanceCurve(reflected, low, high);
    expect(curve.error).toBeLessThanOrEqual(1e-6);
    const at = Float64Array.from({ length: 997 }, (_, i) => low + ((high - low) * i) / 996);
    const read = readCurveInto(new Float64Array(at.length), curve, at);
    // between nodes and midpoints the cubic may be a little farther off than at the midpoints
    for (let i = 0; i < at.length; i++)
      expect(Math.abs(read[i]! - reflected(at[i]!))).toBeLessThanOrEqual(1.2 * curve.error + ROUNDING);
  });

  test('reproduces a cubic exactly', () => {
    const cubic = (d: number): number => 0.3 + 2 * d - 3 * d * d + d ** 3;
    const curve = reflectanceCurve(cubic, 0.2, 1.7);
    expect(curve.error).toBeLessThan(ROUNDING);
    const out = Float64Array.of(0.2, 0.21, 0.9, 1.69, 1.7);
    const expected = out.map(cubic);
    readCurveInto(out, curve, out).forEach((value, i) => expect(Math.abs(value - expected[i]!)).toBeLessThan(ROUNDING));
  });

  test('halving the step divides the error by sixteen', () => {
    const f = (d: number): number => Math.exp(-5 * d);
    const errors = [1e-3, 1e-5].map((wanted) => reflectanceCurve(f, 0, 10, wanted));
    const [coarse, fine] = errors as [(typeof errors)[0], (typeof errors)[0]];
    const halvings = Math.log2(coarse.step / fine.step);
    expect(halvings).toBeGreaterThan(0);
    const order = Math.log2(coarse.error / fine.error) / halvings;
    expect(order).toBeGreaterThan(3.3);
    expect(order).toBeLessThan(4.2);
  });
});
