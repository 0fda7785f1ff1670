import { describe, expect, test } from 'vitest';
import {
  arrivalRatio,
  atomsInFilm,
  CONTAMINATION_BANDS,
  contaminationBand,
  contaminationMap,
  contaminationOverShot,
  gasUptake,
  gettered,
  greatestPressure,
  leastRate,
  recommend,
  RECOMMENDED,
  steadyPace,
  STICKING,
} from '../../../engine/gas/contamination.ts';
import { pureGas, type GasState } from '../../../engine/gas/gases.ts';
import { impingementRate } from '../../../engine/gas/impingement.ts';
import { contaminationQuality } from '../../../engine/film/quality.ts';
import { ROOM, VACUUM } from './gasScenes.ts';

const ROUNDING = 1e-12;
const DENSITY = 2700;
const water = pureGas('H2O', 1e-3, ROOM);
const close = (actual: number, expected: number): void =>
  expect(Math.abs(actual / expected - 1)).toBeLessThan(ROUNDING);

describe('uptake', () => {
  test('counts reactive gases and leaves inert ones out, unless told otherwise', () => {
    expect(gasUptake(pureGas('Ar', 1, ROOM))).toBe(0);
    close(gasUptake(water), impingementRate(water));
    close(gasUptake(pureGas('Ar', 1, ROOM), { Ar: 0.5 }), impingementRate(pureGas('Ar', 1, ROOM)) / 2);
    const mixture: GasState = { pressure: 2e-3, temperature: ROOM, mixture: { H2O: 1, N2: 1 } };
    close(gasUptake(mixture), gasUptake(water));
    expect(gasUptake(VACUUM)).toBe(0);
  });

  test('of air is that of its oxygen, as if the air were one gas', () => {
    const air = pureGas('air', 1e-3, ROOM);
    close(gasUptake(air), STICKING.air.share * impingementRate(air));
    for (const { source } of Object.values(STICKING)) expect(source).not.toBe('');
  });
});

describe('over a shot', () => {
  const thickness = 100e-9;

  test('of steady pace the ratio is that of the moment, whenever', () => {
    const { ratio, mean, uptake } = contaminationOverShot(water, thickness, DENSITY, steadyPace(20), {});
    const expected = arrivalRatio(water, thickness / 20, DENSITY);
    close(mean, expected);
    for (const value of ratio) close(value, expected);
    close(uptake[1]!, 20 * impingementRate(water));
  });

  test('that fades, the last layers take in the most; the whole is gas over metal', () => {
    const pace = {
      time: Float64Array.of(0, 5, 10, 20),
      evaporation: Float64Array.of(0, 4, 2, 0),
      pressure: Float64Array.of(1, 2, 1, 1),
    };
    const { ratio, mean, uptake } = contaminationOverShot(water, thickness, DENSITY, pace);
    expect(ratio[0]).toBe(Infinity);
    expect(ratio[3]).toBe(Infinity);
    // by hand: ∫ evaporation = 10 + 15 + 10 = 35; at 5 s: 2 Φ · 35 / (N · 4)
    close(ratio[1]!, (2 * impingementRate(water) * 35) / (4 * atomsInFilm(thickness, DENSITY)));
    // ∫ pressure = 7.5 + 7.5 + 10 = 25
    close(uptake[3]!, 25 * impingementRate(water));
    close(mean, (25 * impingementRate(water)) / atomsInFilm(thickness, DENSITY));
  });

  test('thin places take in as much gas and more for each atom', () => {
    const map = contaminationMap(water, Float64Array.of(100e-9, 50e-9, 0), DENSITY, steadyPace(20));
    close(map[1]! / map[0]!, 2);
    close(map[0]!, arrivalRatio(water, 5e-9, DENSITY));
    expect(map[2]).toBe(Infinity);
  });

  test('fresh film pumps ¼ v̄ of every square metre, and what it takes is what it pumps', () => {
    const { molecules, quantity, speed } = gettered(water, 10, steadyPace(30));
    close(molecules, 300 * impingementRate(water));
    close(quantity, speed * water.pressure * 30);
    expect(gettered(VACUUM, 10, steadyPace(30)).speed).toBe(0);
  });
});

describe('advice', () => {
  test('the greatest pressure and the least rate are each other’s other side', () => {
    const rate = 3e-9;
    const pressure = greatestPressure(water, rate, DENSITY, 0.02);
    close(arrivalRatio({ ...water, pressure }, rate, DENSITY), 0.02);
    close(leastRate({ ...water, pressure }, DENSITY, 0.02), rate);
    expect(greatestPressure(pureGas('Ar', 1, ROOM), rate, DENSITY, 0.02)).toBe(Infinity);
  });

  test('keeps to practice where the ratio asks for less, and tightens it where it asks for more', () => {
    const inert = recommend(pureGas('Ar', 1e-3, ROOM), 10e-9, DENSITY);
    expect(inert).toEqual({ pressure: RECOMMENDED.pressure, rate: RECOMMENDED.rate, isKept: true });
    const wet = recommend(water, 10e-9, DENSITY);
    expect(wet.pressure).toBeLessThan(RECOMMENDED.pressure);
    expect(wet.rate).toBeGreaterThan(RECOMMENDED.rate);
    expect(wet.isKept).toBe(false);
    expect(recommend({ ...water, pressure: wet.pressure }, 10e-9, DENSITY).isKept).toBe(true);
  });

  test('bands meet without a gap, and are those by which the film is graded', () => {
    CONTAMINATION_BANDS.forEach(({ upTo }, i) => expect(upTo).toBeGreaterThan(CONTAMINATION_BANDS[i - 1]?.upTo ?? 0));
    for (const ratio of [0, 0.0099, 0.01, 0.0101, 0.05, 0.051, 3, Infinity])
      expect(contaminationBand(ratio).name).toBe(contaminationQuality({ arrivalRatio: ratio }).grade);
  });
});
