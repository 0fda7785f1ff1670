import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { createFace, faceTriangles, isClear, refineFace, type Cell, type Face } from '../../../engine/geometry/face.ts';
import { isOnGlass, sag, type MirrorShape } from '../../../engine/geometry/mirrorShape.ts';
import { relativeError, shapeOf } from '../../support/plants.ts';
import { gaussLegendre } from '../../support/quadrature.ts';

/** 2000 points of an order-8 rule on smooth faces leave less than this of the area. */
const SMOOTH = 1e-9;
/** Flat round faces are integrated exactly: dA is linear in the radius. */
const EXACT = 1e-13;
/** A hexagon's outline in its sextants is 1/cos: smooth, but steeper. */
const HEXAGON = 1e-7;
/** A refined cell has Simpson's rule on quarters of the coarsest cells here, 30° wide: Δ⁵/2880 · f⁗ of a hexagon's sec²θ. */
const REFINED = 3e-4;

const areaOf = (cells: readonly Cell[], rule: 'weights' | 'coarse' = 'weights'): number =>
  cells.reduce((sum, cell) => sum + cell[rule].reduce((all, weight) => all + weight, 0), 0);

/** Sum over cells of how far their two rules differ: the stated error. */
const rulesDiffer = (cells: readonly Cell[]): number =>
  cells.reduce((sum, cell) => sum + Math.abs(areaOf([cell]) - areaOf([cell], 'coarse')), 0);

const faceOf = (overrides: Partial<MirrorShape>, points = 2000): Face => createFace(shapeOf(overrides), points);

describe('the area of a face', () => {
  test('is π(a² − b²) of a flat annulus', () => {
    expect(
      relativeError(areaOf(faceOf({ rimRadius: 1.3, holeRadius: 0.2 }).cells), Math.PI * (1.3 ** 2 - 0.2 ** 2)),
    ).toBeLessThan(EXACT);
  });

  test('is (3√3/2)R² of a flat hexagon, less its hole', () => {
    for (const cornerAngle of [0, 0.3]) {
      const whole = 1.5 * Math.sqrt(3) * 1.1 ** 2;
      expect(relativeError(areaOf(faceOf({ rimRadius: 1.1, cornerAngle }).cells), whole)).toBeLessThan(HEXAGON);
      expect(
        relativeError(areaOf(faceOf({ rimRadius: 1.1, cornerAngle, holeRadius: 0.3 }).cells), whole - Math.PI * 0.09),
      ).toBeLessThan(HEXAGON);
    }
  });

  test('is that of a paraboloid with a hole', () => {
    // (2π/3c²)[(1 + c²r²)^1.5] between the radii, calculus
    for (const [c, hole] of [
      [0.3, 0],
      [0.8, 0.25],
      [-0.8, 0.25],
    ] as const) {
      const part = (r: number): number => ((2 * Math.PI) / (3 * c * c)) * (1 + c * c * r * r) ** 1.5;
      const area = areaOf(faceOf({ curvature: c, conicConstant: -1, holeRadius: hole }).cells);
      expect(relativeError(area, part(1) - part(hole))).toBeLessThan(SMOOTH);
    }
  });

  test('is 2πR·height of a sphere’s zone', () => {
    const shape = { curvature: 0.5, conicConstant: 0, holeRadius: 0.3 };
    const height = sag(shapeOf(shape), 1) - sag(shapeOf(shape), 0.3);
    expect(relativeError(areaOf(faceOf(shape).cells), 2 * Math.PI * 2 * height)).toBeLessThan(SMOOTH);
  });

  test('is that of the parent under an off-axis outline', () => {
    // slow reference: polar quadrature about the middle of the glass, written out
    const shape = shapeOf({ curvature: 0.2, conicConstant: -1, centerX: 2.5, holeRadius: 0.2 });
    const radii = gaussLegendre(24, 0.2, 1);
    const steps = 64;
    let area = 0;
    radii.nodes.forEach((r, i) => {
      for (let k = 0; k < steps; k++) {
        const angle = (2 * Math.PI * k) / steps;
        const parent = Math.hypot(2.5 + r * Math.cos(angle), r * Math.sin(angle));
        area += ((radii.weights[i]! * 2 * Math.PI * r) / steps) * Math.sqrt(1 + (0.2 * parent) ** 2);
      }
    });
    expect(relativeError(areaOf(createFace(shape, 2000).cells), area)).toBeLessThan(SMOOTH);
  });

  test('of the clear aperture is the part between its radii, of the edge its outermost 2 %', () => {
    const { cells } = faceOf({ rimRadius: 1, holeRadius: 0.1, clearInnerRadius: 0.15, clearOuterRadius: 0.9 });
    expect(relativeError(areaOf(cells.filter(isClear)), Math.PI * (0.9 ** 2 - 0.15 ** 2))).toBeLessThan(EXACT);
    const edge = cells.filter(({ zone }) => zone === 'edge');
    expect(relativeError(areaOf(edge), Math.PI * 0.9 ** 2 * (1 - 0.98 ** 2))).toBeLessThan(1e-12); // a difference of radii
    expect(relativeError(areaOf(cells), Math.PI * (1 - 0.01))).toBeLessThan(EXACT);
  });

  test('of a round clear aperture on a hexagon that cuts it is the closed form', () => {
    // a circle of 0.95 R overhangs the six sides (apothem 0.866 R): less six segments of half angle φ
    const radius = 0.95;
    const half = Math.acos(Math.sqrt(0.75) / radius);
    const area = Math.PI * radius ** 2 - 6 * radius ** 2 * (half - Math.sin(half) * Math.cos(half));
    const { cells } = faceOf({ cornerAngle: 0.1, clearOuterRadius: radius }, 6000);
    expect(relativeError(areaOf(cells.filter(isClear)), area)).toBeLessThan(HEXAGON);
    expect(relativeError(areaOf(cells), 1.5 * Math.sqrt(3))).toBeLessThan(HEXAGON);
  });
});

test('both rules of every cell agree on a flat round face, and the triangles fill it', () => {
  const face = faceOf({ holeRadius: 0.2 });
  expect(relativeError(areaOf(face.cells, 'coarse'), areaOf(face.cells))).toBeLessThan(EXACT);
  const { position } = face.points;
  const triangles = faceTriangles(face.cells);
  let area = 0;
  for (let t = 0; t < triangles.length; t += 3) {
    const [a, b, c] = [3 * triangles[t]!, 3 * triangles[t + 1]!, 3 * triangles[t + 2]!];
    const cross =
      (position[b]! - position[a]!) * (position[c + 1]! - position[a + 1]!) -
      (position[b + 1]! - position[a + 1]!) * (position[c]! - position[a]!);
    area += Math.abs(cross) / 2;
  }
  // chords of steps up to 2π·0.33/panels inside the rim: the widest chord, 0.3274 of a panel, cuts off about θ²/6
  const widest = ((2 * Math.PI) / (face.azimuthCount / 4)) * 0.33;
  expect(relativeError(area, Math.PI * 0.96)).toBeLessThan(widest ** 2 / 6);
});

/** Any mirror that the door would accept. */
const shapes = fc
  .record({
    curvature: fc.double({ min: -0.4, max: 0.4, noNaN: true }),
    conicConstant: fc.double({ min: -3, max: 0.5, noNaN: true }),
    cornerAngle: fc.option(fc.double({ min: 0, max: 1, noNaN: true })),
    holeRadius: fc.constantFrom(0, 0.1, 0.4),
    clearOuterRadius: fc.constantFrom(1, 0.95, 0.8),
    centerX: fc.constantFrom(0, 0.4),
  })
  .map((overrides) => shapeOf(overrides));

test('splitting cells keeps every old point, and the area to what the two rules differ by', () => {
  fc.assert(
    fc.property(shapes, fc.array(fc.nat(), { minLength: 1, maxLength: 40 }), (shape, picks) => {
      let face = createFace(shape, 900);
      const area = areaOf(face.cells);
      const clear = areaOf(face.cells.filter(isClear));
      for (let level = 0; level < 3; level++) {
        const before = face;
        const split = [...new Set(picks.map((pick) => pick % before.cells.length))];
        const { face: finer, added } = refineFace(before, split);
        expect(finer.cells.length).toBe(before.cells.length + 3 * split.length);
        expect(added.count).toBe(25 * split.length);
        expect(finer.points.position.subarray(0, 3 * before.points.count)).toEqual(before.points.position);
        face = finer;
      }
      expect(Math.abs(areaOf(face.cells) - area)).toBeLessThanOrEqual(rulesDiffer(face.cells) + EXACT * area);
      expect(relativeError(areaOf(face.cells), area)).toBeLessThan(REFINED);
      expect(relativeError(areaOf(face.cells.filter(isClear)), clear)).toBeLessThan(REFINED);
    }),
    { seed: 17, numRuns: 60, endOnFailure: true },
  );
});

test('every point of a face, refined or not, lies on the glass and on the surface', () => {
  fc.assert(
    fc.property(shapes, (shape) => {
      const { face } = refineFace(createFace(shape, 700), [0, 3, 11]);
      const { position, count } = face.points;
      // points on the very rim may fall a rounding beside it
      const roomy = { ...shape, rimRadius: shape.rimRadius * (1 + 1e-12), holeRadius: shape.holeRadius * (1 - 1e-12) };
      for (let i = 0; i < count; i++) {
        const [x, y, z] = position.subarray(3 * i, 3 * i + 3) as unknown as [number, number, number];
        expect(isOnGlass(roomy, x, y)).toBe(true);
        expect(z).toBe(sag(shape, Math.hypot(x, y)));
      }
    }),
    { seed: 18, numRuns: 40, endOnFailure: true },
  );
});

test('the grid has about as many points as asked for', () => {
  for (const points of [2000, 20_000, 60_000]) {
    for (const overrides of [{}, { holeRadius: 0.3 }, { cornerAngle: 0 }]) {
      const { count } = faceOf(overrides, points).points;
      expect(count / points).toBeGreaterThan(0.7);
      expect(count / points).toBeLessThan(1.4);
    }
  }
});
