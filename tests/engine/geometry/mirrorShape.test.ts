import { describe, expect, test } from 'vitest';
import {
  backHeight,
  faceHeights,
  isInGlass,
  isOnGlass,
  mirrorShape,
  outlineRadius,
  sag,
  slope,
  surfacePointInto,
  type MirrorShape,
} from '../../../engine/geometry/mirrorShape.ts';
import { plantOf, oneSource, shapeOf } from '../../support/plants.ts';

/** Central differences with step 1e-5 of surfaces of curvature about 1: truncation 1e-11, rounding 1e-16/1e-5. */
const STEP = 1e-5;
const DIFFERENCE = 1e-10;
const ROUNDING = 1e-15;

const SHAPES: Readonly<Record<string, MirrorShape>> = {
  flat: shapeOf(),
  paraboloid: shapeOf({ curvature: 0.3, conicConstant: -1 }),
  sphere: shapeOf({ curvature: 0.5, conicConstant: 0 }),
  'oblate ellipsoid': shapeOf({ curvature: 0.5, conicConstant: 0.8 }),
  hyperboloid: shapeOf({ curvature: 0.4, conicConstant: -3.2 }),
  'convex sphere': shapeOf({ curvature: -0.5, conicConstant: 0 }),
  asphere: shapeOf({
    curvature: 0.2,
    conicConstant: -1.1,
    aspheric: [
      { power: 4, coefficient: 3e-3 },
      { power: 8, coefficient: -2e-4 },
    ],
  }),
};

describe.each(Object.entries(SHAPES))('a %s', (_, shape) => {
  test('slopes as its sag changes', () => {
    for (const r of [0.01, 0.3, 0.7, 0.999]) {
      const change = (sag(shape, r + STEP) - sag(shape, r - STEP)) / (2 * STEP);
      expect(Math.abs(slope(shape, r) - change)).toBeLessThan(DIFFERENCE);
    }
    expect(Math.abs(slope(shape, 0))).toBe(0);
  });

  test('has normals of unit length that stand on it and point into the tank', () => {
    const position = new Float64Array(3);
    const normal = new Float64Array(3);
    for (const [x, y] of [
      [0, 0],
      [0.5, 0],
      [-0.3, 0.6],
      [0.1, -0.9],
    ] as const) {
      surfacePointInto(position, normal, 0, shape, x, y);
      const height = (px: number, py: number): number => sag(shape, Math.hypot(px, py));
      const gx = (height(x + STEP, y) - height(x - STEP, y)) / (2 * STEP);
      const gy = (height(x, y + STEP) - height(x, y - STEP)) / (2 * STEP);
      expect([...position]).toEqual([x, y, height(x, y)]);
      expect(Math.abs(Math.hypot(...normal) - 1)).toBeLessThan(ROUNDING);
      expect(normal[2]).toBeGreaterThan(0);
      expect(Math.abs(normal[0]! + gx * normal[2]!)).toBeLessThan(DIFFERENCE);
      expect(Math.abs(normal[1]! + gy * normal[2]!)).toBeLessThan(DIFFERENCE);
    }
  });

  test('lies between its heights, above its back', () => {
    const { low, high } = faceHeights(shape);
    for (let r = 0; r <= 1; r += 0.01) {
      expect(sag(shape, r)).toBeGreaterThanOrEqual(low - ROUNDING);
      expect(sag(shape, r)).toBeLessThanOrEqual(high + ROUNDING);
    }
    expect(backHeight(shape)).toBe(low - shape.thickness);
    expect(isInGlass(shape, 0.2, 0.1, low - 0.01)).toBe(true);
    expect(isInGlass(shape, 0.2, 0.1, sag(shape, Math.hypot(0.2, 0.1)) + 1e-9)).toBe(false);
  });
});

test('conics take their textbook sags', () => {
  // analytic geometry: paraboloid r²/2R, sphere R − √(R² − r²), hyperboloid from its own equation
  for (const r of [0.1, 0.6, 1]) {
    expect(Math.abs(sag(SHAPES['paraboloid']!, r) - 0.15 * r * r)).toBeLessThan(ROUNDING);
    expect(Math.abs(sag(SHAPES['sphere']!, r) - (2 - Math.sqrt(4 - r * r)))).toBeLessThan(ROUNDING);
    expect(Math.abs(sag(SHAPES['convex sphere']!, r) + (2 - Math.sqrt(4 - r * r)))).toBeLessThan(ROUNDING);
    const z = sag(SHAPES['hyperboloid']!, r);
    expect(Math.abs(r * r - 2 * 2.5 * z + (1 - 3.2) * z * z)).toBeLessThan(1e-14); // r² − 2Rz + (1+K)z² = 0
  }
});

test('the design’s terms arrive in metres', () => {
  const plant = plantOf({
    mirror: {
      radiusOfCurvature: '-4000 mm',
      conicConstant: -2,
      outerDiameter: '2 m',
      aspheric: [
        { power: 4, coefficient: '1.5e-12 mm^-3' },
        { power: 6, coefficient: '2e-4 m^-5' },
      ],
    },
    tank: { diameter: '3 m', depth: '2 m' },
    ...oneSource([0, 0, 1], { law: 'isotropic' }),
  });
  const r = 0.8;
  const conic = (-0.25 * r * r) / (1 + Math.sqrt(1 + (0.25 * r) ** 2));
  expect(Math.abs(sag(plant.shape, r) - (conic + 1.5e-3 * r ** 4 + 2e-4 * r ** 6))).toBeLessThan(ROUNDING);
});

test('a hexagon reaches its corners and no farther than its sides', () => {
  const shape = shapeOf({ cornerAngle: 0.2 });
  const apothem = Math.sqrt(3) / 2;
  for (let k = 0; k < 6; k++) {
    expect(Math.abs(outlineRadius(shape, 0.2 + (k * Math.PI) / 3) - 1)).toBeLessThan(ROUNDING);
    expect(Math.abs(outlineRadius(shape, 0.2 + ((k + 0.5) * Math.PI) / 3) - apothem)).toBeLessThan(ROUNDING);
  }
  for (let angle = -7; angle < 7; angle += 0.05) {
    const r = outlineRadius(shape, angle);
    expect(isOnGlass(shape, 0.999 * r * Math.cos(angle), 0.999 * r * Math.sin(angle))).toBe(true);
    expect(isOnGlass(shape, 1.001 * r * Math.cos(angle), 1.001 * r * Math.sin(angle))).toBe(false);
    // the side is straight: the distance of the outline's point from the side's line is the apothem
    const side = Math.floor((angle - 0.2) / (Math.PI / 3)) + 0.5;
    expect(Math.abs(r * Math.cos(angle - 0.2 - (side * Math.PI) / 3) - apothem)).toBeLessThan(1e-14);
  }
});

test('an off-axis mirror is a piece of its parent', () => {
  const shape = shapeOf({ curvature: 0.2, conicConstant: -1, centerX: 2, holeRadius: 0.3 });
  const position = new Float64Array(3);
  const normal = new Float64Array(3);
  surfacePointInto(position, normal, 0, shape, 2.5, -0.4);
  expect(Math.abs(position[2]! - 0.1 * (2.5 ** 2 + 0.4 ** 2))).toBeLessThan(ROUNDING);
  expect(Math.abs(normal[0]! / normal[2]! + 0.2 * 2.5)).toBeLessThan(ROUNDING);
  expect(Math.abs(normal[1]! / normal[2]! - 0.2 * 0.4)).toBeLessThan(ROUNDING);
  expect(isOnGlass(shape, 2, 0)).toBe(false);
  expect(isOnGlass(shape, 2.31, 0)).toBe(true);
  expect(isOnGlass(shape, 0, 0)).toBe(false);
  const { low, high } = faceHeights(shape);
  expect(Math.abs(low - 0.1)).toBeLessThan(ROUNDING);
  expect(Math.abs(high - 0.9)).toBeLessThan(ROUNDING);
});

test('a clear aperture stays on the glass', () => {
  const design = {
    radiusOfCurvature: 8,
    conicConstant: -1,
    aspheric: undefined,
    outerDiameter: 2,
    holeDiameter: 0.5,
    outline: 'round' as const,
    cornerAngle: 0,
    offAxisDistance: 0,
    facing: 'down' as const,
    thickness: undefined,
  };
  const narrow = mirrorShape({ ...design, clearAperture: { innerDiameter: 0.6, outerDiameter: 1.9 } });
  expect([narrow.clearInnerRadius, narrow.clearOuterRadius]).toEqual([0.3, 0.95]);
  const loose = mirrorShape({ ...design, clearAperture: { innerDiameter: 0.1, outerDiameter: undefined } });
  expect([loose.clearInnerRadius, loose.clearOuterRadius]).toEqual([0.25, 1]);
  expect(loose.thickness).toBe(0.2);
});
