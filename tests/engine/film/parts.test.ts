/** Opacity, scatter, growth of the oxide, and slanted vapour. */
import { describe, expect, test } from 'vitest';
import { lineLight } from '../../../engine/film/light.ts';
import { columnTilt, DENSE, filmGrade, leastDensity, POROUS, WATCH } from '../../../engine/film/obliqueFilm.ts';
import { opaqueThickness, OPACITY_CRITERIA } from '../../../engine/film/opacity.ts';
import { OXIDE_STAGES, oxideAfter } from '../../../engine/film/oxideGrowth.ts';
import { litFilm } from '../../../engine/film/reflectanceCurve.ts';
import { roughnessOf, totalScatter } from '../../../engine/film/scatter.ts';
import { filmOf } from './films.ts';

const ROUNDING = 1e-12;
const degrees = Math.PI / 180;

describe('opacity', () => {
  const lit = litFilm(filmOf({ oxide: '0 nm' }), lineLight(550e-9));

  test.each([0.5, 1e-2, 1e-4, 1e-8])('no thinner coat lets less than %d through', (limit) => {
    const thickness = opaqueThickness(lit, { kind: 'transmitted', limit });
    expect(Math.abs(lit.transmitted(thickness) / limit - 1)).toBeLessThan(1e-9);
    expect(lit.transmitted(thickness * 0.999)).toBeGreaterThan(limit);
  });

  test('each factor of e in the limit costs λ/4πk once the coat is thick', () => {
    const at = (limit: number): number => opaqueThickness(lit, { kind: 'transmitted', limit });
    // k of aluminium at 550 nm by linear interpolation: 6.62728
    const slope = 550e-9 / (4 * Math.PI * 6.62728);
    expect(Math.abs((at(1e-9) - at(1e-8)) / (Math.log(10) * slope) - 1)).toBeLessThan(1e-5);
  });

  test('beyond the thickness found the reflectance stays within its limit', () => {
    for (const within of [0.05, 1e-2, 1e-3, 1e-5]) {
      const thickness = opaqueThickness(lit, { kind: 'reflected', within });
      expect(Math.abs(Math.abs(lit.reflected(thickness) - lit.opaqueReflected) / within - 1)).toBeLessThan(1e-4);
      for (let d = thickness; d < 200e-9; d += 1e-9)
        expect(Math.abs(lit.reflected(d) - lit.opaqueReflected)).toBeLessThan(within * (1 + 1e-6));
    }
  });

  test('bare glass is opaque enough for one who asks for nothing; no coat is for one who asks for the impossible', () => {
    expect(opaqueThickness(lit, { kind: 'transmitted', limit: 1 })).toBe(0);
    expect(opaqueThickness(lit, { kind: 'reflected', within: 1 })).toBe(0);
    expect(opaqueThickness(lit, { kind: 'transmitted', limit: 0 })).toBe(Infinity);
  });

  test('the criteria name their sources, and the first is the lamp in a lit room', () => {
    for (const { source } of OPACITY_CRITERIA) expect(source.length).toBeGreaterThan(10);
    expect(OPACITY_CRITERIA[0]?.name).toContain('lit room');
  });
});

describe('scatter', () => {
  test('is the square of 4πσ/λ for a smooth surface, and all of the light for a rough one', () => {
    expect(Math.abs(totalScatter(1e-10, 550e-9) / ((4 * Math.PI * 1e-10) / 550e-9) ** 2 - 1)).toBeLessThan(1e-5);
    expect(totalScatter(0, 550e-9)).toBe(0);
    expect(totalScatter(1e-6, 550e-9)).toBe(1);
  });

  test('1 nm rms scatters 0.052 % at 550 nm and 0.25 % at 250 nm', () => {
    // (4π/550)² = 5.220e-4, (4π/250)² = 2.5266e-3, by hand
    expect(Math.abs(totalScatter(1e-9, 550e-9) - 5.219e-4)).toBeLessThan(1e-7);
    expect(Math.abs(totalScatter(1e-9, 250e-9) - 2.5234e-3)).toBeLessThan(1e-6);
  });

  test('falls with the angle, and gives its roughness back', () => {
    expect(totalScatter(2e-9, 400e-9, 0.5)).toBeLessThan(totalScatter(2e-9, 400e-9, 1) / 3.9);
    expect(Math.abs(roughnessOf(totalScatter(2e-9, 400e-9, 0.7), 400e-9, 0.7) / 2e-9 - 1)).toBeLessThan(ROUNDING);
  });
});

describe('the oxide', () => {
  test('passes through its published stages', () => {
    for (const { time, thickness, spread } of OXIDE_STAGES) {
      expect(Math.abs(oxideAfter(time).value / thickness - 1)).toBeLessThan(ROUNDING);
      expect(oxideAfter(time).error).toBeCloseTo(spread, 20);
    }
  });

  test('is nothing in vacuum, there at once in air, never shrinks, and stops', () => {
    expect(oxideAfter(0)).toEqual({ value: 0, error: 0 });
    expect(oxideAfter(60).value).toBe(1.5e-9);
    let before = 0;
    for (let time = 1; time < 1e10; time *= 1.5) {
      expect(oxideAfter(time).value).toBeGreaterThanOrEqual(before);
      before = oxideAfter(time).value;
    }
    expect(before).toBe(3.8e-9);
  });

  test('after a month to a year is 2 to 4.5 nm', () => {
    // dhirubhai.net, "Oxidation of aluminum": 2–4.5 nm in one month to one year
    for (const days of [30, 100, 365]) {
      const { value, error } = oxideAfter(days * 86_400);
      expect(value - error).toBeGreaterThan(2e-9);
      expect(value + error).toBeLessThanOrEqual(4.5e-9);
    }
  });
});

describe('slanted vapour', () => {
  test('leans the columns by half the tangent', () => {
    expect(columnTilt(0)).toBe(0);
    expect(Math.abs(Math.tan(columnTilt(50 * degrees)) * 2 - Math.tan(50 * degrees))).toBeLessThan(ROUNDING);
    // tan 60° / 2 = 0.8660 → 40.89°
    expect(Math.abs(columnTilt(60 * degrees) / degrees - 40.8934)).toBeLessThan(1e-4);
  });

  test('opens gaps as it slants', () => {
    expect(leastDensity(1)).toBe(1);
    expect(Math.abs(leastDensity(0.5) - 2 / 3)).toBeLessThan(ROUNDING);
    expect(leastDensity(0)).toBe(0);
  });

  test.each([
    [0, 0, DENSE],
    [44, 0.1, DENSE],
    [46, 0.1, WATCH],
    [59, 0.49, WATCH],
    [61, 0.2, POROUS],
    [50, 0.6, POROUS],
    [NaN, NaN, DENSE],
  ])('with a mean of %d° and a share of %d beyond 60° makes a film of grade %d', (mean, share, grade) => {
    expect(filmGrade(mean * degrees, share)).toBe(grade);
  });
});
