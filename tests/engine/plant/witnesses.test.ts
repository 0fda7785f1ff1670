import { describe, expect, test } from 'vitest';
import { isOnGlass, outlineRadius } from '../../../engine/geometry/mirrorShape.ts';
import type { Witness } from '../../../engine/plant/plant.ts';
import { gap, ROUNDING, samplePlant } from './samplePlant.ts';

const RING = { arrangement: 'ring', count: 6, diameter: '2 m', height: '1 m' };
const DEGREE = Math.PI / 180;

function witnessOf(witness: object, mirror?: object): Witness {
  const rest = { witnesses: [{ name: 'W', ...witness }], ...(mirror ? { mirror } : {}) };
  const [placed] = samplePlant(RING, {}, rest).witnesses;
  if (!placed) throw new Error('no witness was placed');
  return placed;
}

/** Paraboloid z = r²/2R with R = 10 m: its normal is (−x/R, −y/R, 1), scaled. */
function paraboloid(x: number, y: number): { position: number[]; normal: number[] } {
  const norm = Math.hypot(x / 10, y / 10, 1);
  return { position: [x, y, (x * x + y * y) / 20], normal: [-x / 10 / norm, -y / 10 / norm, 1 / norm] };
}

describe('a witness given by radius and angle', () => {
  test.each([
    ['on the glass', 0.7, 30, true],
    ['just within the rim', 0.9999, 200, true],
    ['beyond the rim, on the continuation of the surface', 1.3, -75, false],
    ['in the hole', 0.1, 90, false],
    ['at the vertex', 0, 0, false],
  ])('lies %s and faces as the mirror would there', (_name, radius, angle, onGlass) => {
    const placed = witnessOf({ radius: `${radius} m`, angle: `${angle} deg` });
    const expected = paraboloid(radius * Math.cos(angle * DEGREE), radius * Math.sin(angle * DEGREE));
    expect(gap(placed.position, expected.position)).toBeLessThan(ROUNDING);
    expect(gap(placed.normal, expected.normal)).toBeLessThan(ROUNDING);
    expect(placed.onGlass).toBe(onGlass);
  });

  test('counts from the middle of an off-axis mirror', () => {
    const mirror = { radiusOfCurvature: '10 m', conicConstant: -1, outerDiameter: '2 m', offAxisDistance: '1.5 m' };
    const placed = witnessOf({ radius: '0.5 m', angle: '60 deg' }, mirror);
    const expected = paraboloid(1.5 + 0.5 * Math.cos(60 * DEGREE), 0.5 * Math.sin(60 * DEGREE));
    expect(gap(placed.position, expected.position)).toBeLessThan(ROUNDING);
    expect(gap(placed.normal, expected.normal)).toBeLessThan(ROUNDING);
  });
});

describe('a witness with a position of its own', () => {
  const position = ['1.2 m', '0.3 m', '0.4 m'];

  test('faces the filaments unless given a normal', () => {
    expect(witnessOf({ position })).toEqual({
      name: 'W',
      position: [1.2, 0.3, 0.4],
      normal: [0, 0, 1],
      area: (Math.PI / 4) * 0.025 ** 2,
      onGlass: false,
    });
  });

  test('keeps its normal, at unit length, and its diameter', () => {
    const placed = witnessOf({ position, normal: [0, -3, 4], diameter: '2 in' });
    expect(gap(placed.normal, [0, -0.6, 0.8])).toBeLessThan(ROUNDING);
    expect(Math.abs(placed.area - Math.PI * 0.0254 ** 2)).toBeLessThan(ROUNDING);
  });
});

describe('a hexagon', () => {
  const mirror = { radiusOfCurvature: '10 m', outerDiameter: '2 m', outline: 'hexagon', cornerAngle: '15 deg' };
  const { shape } = samplePlant(RING, {}, { mirror });

  test('has its corners on the circle of its outer diameter, its edges √3/2 as far', () => {
    // apothem of a regular hexagon: R·cos 30°
    for (let i = 0; i < 6; i++) {
      expect(Math.abs(outlineRadius(shape, (15 + 60 * i) * DEGREE) - 1)).toBeLessThan(ROUNDING);
      expect(Math.abs(outlineRadius(shape, (45 + 60 * i) * DEGREE) - Math.sqrt(3) / 2)).toBeLessThan(ROUNDING);
    }
  });

  test('ends where its outline ends', () => {
    for (let degrees = 0; degrees < 360; degrees += 7) {
      const [angle, r] = [degrees * DEGREE, outlineRadius(shape, degrees * DEGREE)];
      expect(isOnGlass(shape, 0.999 * r * Math.cos(angle), 0.999 * r * Math.sin(angle))).toBe(true);
      expect(isOnGlass(shape, 1.001 * r * Math.cos(angle), 1.001 * r * Math.sin(angle))).toBe(false);
    }
  });

  test('has room for a witness beside an edge', () => {
    expect(witnessOf({ radius: '0.9 m', angle: '45 deg' }, mirror).onGlass).toBe(false);
    expect(witnessOf({ radius: '0.9 m', angle: '15 deg' }, mirror).onGlass).toBe(true);
  });
});
