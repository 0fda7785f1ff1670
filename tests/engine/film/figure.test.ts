/** The coat as a figure error, and the light it costs, on coats whose thickness is given. */
import { describe, expect, test } from 'vitest';
import { figureOf } from '../../../engine/film/figure.ts';
import { compareCoats, lightLost } from '../../../engine/film/lightLost.ts';
import { plantedCoat } from './films.ts';

/** Sums over 4,000 points, relative to the largest number in them. */
const ROUNDING = 1e-9;
const MEAN = 100e-9;
const options = { wavelength: 633e-9 };

describe('the figure', () => {
  test('of an even coat is perfect', () => {
    const figure = figureOf(
      plantedCoat(() => MEAN),
      options,
    );
    expect(figure.asCoated.surface.peakToValley.value).toBeLessThan(ROUNDING * MEAN);
    expect(figure.corrected.wavefront.rms.value).toBeLessThan(ROUNDING * MEAN);
    expect(figure.strehl).toBeCloseTo(1, 12);
    expect(figure.focusShift).toBeNull();
    expect(figure.sentence).toContain('no image will show it');
  });

  test('of a wedge is a tilt of wavefront peak to valley four times its slope, and nothing once aligned', () => {
    const slope = 3e-9; // per metre, over 2 m
    const coat = plantedCoat((x) => MEAN + slope * x);
    const { asCoated, corrected, terms } = figureOf(coat, options);
    expect(Math.abs(asCoated.surface.peakToValley.value / (2 * slope) - 1)).toBeLessThan(ROUNDING);
    expect(Math.abs(asCoated.wavefront.peakToValley.value / (4 * slope) - 1)).toBeLessThan(ROUNDING);
    // rms of x over the unit disc: 1/2
    expect(Math.abs(asCoated.surface.rms.value / (slope / 2) - 1)).toBeLessThan(1e-8);
    expect(corrected.surface.peakToValley.value).toBeLessThan(ROUNDING * MEAN);
    // Z2 = 2ρ cos φ
    expect(Math.abs(terms[1]!.coefficient / (slope / 2) - 1)).toBeLessThan(1e-8);
    expect(terms[0]!.coefficient / MEAN).toBeCloseTo(1, 9);
    expect(figureOf(coat, { ...options, remove: [] }).corrected).toEqual(asCoated);
    const kept = figureOf(coat, { ...options, remove: ['defocus'] }).corrected;
    expect(Math.abs(kept.surface.peakToValley.value / (2 * slope) - 1)).toBeLessThan(ROUNDING);
  });

  test('of a bowl is a defocus that moves the focus as the new curve does, and nothing once refocused', () => {
    const rise = 20e-9; // more at the edge, 1 m out
    const radius = 8;
    const coat = plantedCoat((x, y) => MEAN + rise * (x * x + y * y), {
      mirror: { radiusOfCurvature: `${radius} m`, holeDiameter: '0.4 m' },
    });
    const { asCoated, corrected, focusShift, terms } = figureOf(coat, options);
    // the surface r²/2R + rise·r² has the radius 1/(1/R + 2·rise); the focus lies at half of it
    const expected = (1 / (1 / radius + 2 * rise) - radius) / 2;
    expect(Math.abs(focusShift! / expected - 1)).toBeLessThan(1e-6);
    expect(focusShift!).toBeLessThan(0);
    expect(asCoated.surface.peakToValley.value).toBeCloseTo(rise * (1 - 0.04), 14);
    expect(corrected.surface.peakToValley.value).toBeLessThan(ROUNDING * MEAN);
    // annular defocus √3(2ρ² − 1 − ε²)/(1 − ε²): rise·ρ² has the coefficient rise·(1 − ε²)/(2√3)
    expect(Math.abs(terms[3]!.coefficient / ((rise * (1 - 0.04)) / (2 * Math.sqrt(3))) - 1)).toBeLessThan(1e-6);
  });

  test('of a thick place stands out toward the light', () => {
    const coat = plantedCoat((x, y) => MEAN + 10e-9 * Math.exp(-8 * ((x - 0.5) ** 2 + y * y)));
    const { surface } = figureOf(coat, { ...options, remove: [] });
    const { position } = coat.face.points;
    const high = surface.indexOf(Math.max(...surface));
    expect(position[3 * high]!).toBeCloseTo(0.5, 1);
    expect(surface[high]!).toBeGreaterThan(0);
  });

  test('keeps e^−(2πσ/λ)² of the peak, and the squares of its terms add up to the rms', () => {
    const coat = plantedCoat((x, y) => MEAN + 8e-9 * (x * x - y * y) + 5e-9 * (x ** 3 - 3 * x * y * y));
    const { corrected, strehl, terms, remainder } = figureOf(coat, options);
    const sigma = corrected.wavefront.rms.value / 633e-9;
    expect(Math.abs(strehl - Math.exp(-((2 * Math.PI * sigma) ** 2)))).toBeLessThan(1e-12);
    const squares = terms.slice(4).reduce((sum, { coefficient }) => sum + coefficient ** 2, 0);
    expect(Math.abs(Math.sqrt(squares + remainder ** 2) / corrected.surface.rms.value - 1)).toBeLessThan(ROUNDING);
    // astigmatism √6 ρ² cos 2φ and trefoil √8 ρ³ cos 3φ
    expect(Math.abs(terms[5]!.coefficient - 8e-9 / Math.sqrt(6))).toBeLessThan(1e-14);
    expect(Math.abs(terms[9]!.coefficient - 5e-9 / Math.sqrt(8))).toBeLessThan(1e-14);
  });

  test('of a bare mirror has numbers, all nothing', () => {
    const figure = figureOf(
      plantedCoat(() => 0),
      options,
    );
    expect(figure.asCoated.wavefront.rms.value).toBe(0);
    expect(figure.strehl).toBe(1);
    for (const { coefficient } of figure.terms) expect(coefficient).toBe(0);
  });

  test.each([
    [0, 'no image will show it'],
    [100e-9, 'the sharpest image keeps'],
    [400e-9, 'it spoils a diffraction-limited image'],
  ])('with %d m of astigmatism says so', (size, words) => {
    const coat = plantedCoat((x, y) => 500e-9 + (size / 2) * (x * x - y * y));
    expect(figureOf(coat, options).sentence).toContain(words);
  });
});

describe('light lost', () => {
  test('is the ratio to the power of the mirrors, its root in diameter, its inverse in time', () => {
    const comparison = compareCoats({ value: 0.81, error: 0.001 }, 0.9, 2, 4);
    expect(comparison.perReflection.value).toBeCloseTo(0.9, 12);
    expect(comparison.throughput.value).toBeCloseTo(0.81, 12);
    expect(comparison.throughput.error).toBeCloseTo((2 * 0.81 * 0.001) / 0.81, 12);
    expect(comparison.diameterRatio).toBeCloseTo(0.9, 12);
    expect(comparison.diameterLost).toBeCloseTo(0.4, 12);
    expect(comparison.exposureRatio).toBeCloseTo(1 / 0.81, 12);
  });

  test('against itself is nothing', () => {
    const same = compareCoats({ value: 0.9, error: 0 }, 0.9, 7, 2);
    expect(same.throughput.value).toBe(1);
    expect(same.diameterLost).toBe(0);
  });

  test('tells what was lost and what was won', () => {
    const { sentence, againstLastYear } = lightLost({ value: 0.9, error: 0 }, 0.92, 0.87, 1, 2);
    expect(sentence).toBe(
      "One reflection gives 2.2 % less light than a perfect fresh coat, as if the mirror were 22 mm smaller across or exposures 2.2 % longer. It gives 3.4 % more light than last year's coat, as if the mirror were 34 mm larger across or exposures 3.3 % shorter.",
    );
    expect(againstLastYear?.throughput.value).toBeCloseTo(0.9 / 0.87, 12);
  });

  test('without a measurement leaves last year out', () => {
    const lost = lightLost({ value: 0.92, error: 0 }, 0.92, null, 3, 2);
    expect(lost.againstLastYear).toBeNull();
    expect(lost.sentence).toBe('3 reflections give as much light as a perfect fresh coat.');
  });
});
