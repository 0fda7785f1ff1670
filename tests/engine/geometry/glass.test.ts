import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { canGlassShade, firstHitOfBody, firstHitOfFace, glassOf } from '../../../engine/geometry/glass.ts';
import { isInGlass, isOnGlass, sag, surfacePointInto, type MirrorShape } from '../../../engine/geometry/mirrorShape.ts';
import { isOccludedByGlass } from '../../../engine/geometry/scene.ts';
import { shapeOf, type Vector } from '../../support/plants.ts';

/** Hits lie on the surface to rounding; a ray at 3° to it amplifies that twentyfold. */
const ON_SURFACE = 1e-12;
/** The aspheric search bisects 60 times in at most the slab's length. */
const ON_ASPHERE = 1e-12;

const conic = fc
  .record({
    curvature: fc.constantFrom(0, 0.1, 0.45, -0.1, -0.45),
    conicConstant: fc.constantFrom(-1, 0, 0.3, -2.5),
    cornerAngle: fc.constantFrom(null, 0, 0.4),
    holeRadius: fc.constantFrom(0, 0.25),
    centerX: fc.constantFrom(0, 0.5, 0.9),
  })
  .map((overrides) => shapeOf(overrides));
const asphere = conic.chain((shape) =>
  fc
    .constantFrom(0.01, -0.01, 0.05, -0.08)
    .map((coefficient): MirrorShape => ({ ...shape, aspheric: [{ power: 4, coefficient }] })),
);

const unitInterval = fc.double({ min: 0, max: 1, noNaN: true });

/** A place on the glass, away from its outline. */
function onFace(shape: MirrorShape, u: number, v: number): { readonly point: Vector; readonly normal: Vector } {
  const inner = shape.holeRadius + 0.01;
  const outer = (shape.cornerAngle === null ? 1 : Math.sqrt(0.75)) - 0.01;
  const r = Math.sqrt(inner ** 2 + u * (outer ** 2 - inner ** 2));
  const position = new Float64Array(3);
  const normal = new Float64Array(3);
  surfacePointInto(position, normal, 0, shape, shape.centerX + r * Math.cos(6.28 * v), r * Math.sin(6.28 * v));
  return { point: [...position] as unknown as Vector, normal: [...normal] as unknown as Vector };
}

const source = fc
  .tuple(unitInterval, unitInterval, unitInterval)
  .map(([a, b, c]): Vector => [-2 + 5 * a, -2 + 4 * b, -0.8 + 2.8 * c]);

const above = (shape: MirrorShape, [x, y, z]: Vector): number => z - sag(shape, Math.hypot(x, y));
const at = (o: Vector, d: Vector, t: number): Vector => [o[0] + t * d[0], o[1] + t * d[1], o[2] + t * d[2]];

/** First crossing of the face along o + t d, t from 0 to 1.2, by small steps and bisection; Infinity if none. */
function marchToFace(shape: MirrorShape, o: Vector, d: Vector): number {
  const steps = 1200;
  let before = above(shape, o);
  for (let i = 1; i <= steps; i++) {
    const now = above(shape, at(o, d, (1.2 * i) / steps));
    if (now > 0 !== before > 0) {
      let [from, to] = [(1.2 * (i - 1)) / steps, (1.2 * i) / steps];
      for (let k = 0; k < 60; k++) {
        const middle = (from + to) / 2;
        if (above(shape, at(o, d, middle)) > 0 === before > 0) from = middle;
        else to = middle;
      }
      const [x, y] = at(o, d, from);
      if (isOnGlass(shape, x, y)) return from;
    }
    before = now;
  }
  return Infinity;
}

describe.each([
  ['conic', conic, ON_SURFACE],
  ['aspheric', asphere, ON_ASPHERE],
] as const)('a ray aimed at a %s face', (_, shapes, onSurface) => {
  test('meets it where marching and bisecting do', () => {
    fc.assert(
      fc.property(shapes, source, unitInterval, unitInterval, (shape, o, u, v) => {
        const { point, normal } = onFace(shape, u, v);
        const d: Vector = [point[0] - o[0], point[1] - o[1], point[2] - o[2]];
        const length = Math.hypot(...d);
        const cosArrive = -(d[0] * normal[0] + d[1] * normal[1] + d[2] * normal[2]) / length;
        fc.pre(length > 0.1 && Math.abs(cosArrive) > 0.05 && Math.abs(above(shape, o)) > 1e-3);
        const t = firstHitOfFace(glassOf(shape), ...o, ...d, 1e-9);
        expect(t).toBeLessThanOrEqual(1 + onSurface); // the aimed-at point at the latest
        expect(Math.abs(above(shape, at(o, d, t)))).toBeLessThan(onSurface * 10);
        const marched = marchToFace(shape, o, d);
        // two crossings closer than a marching step may be missed by it, never by the closed form
        expect(t).toBeLessThanOrEqual(marched + 1e-9);
        if (Math.abs(t - marched) > 1e-9) expect(Math.abs(above(shape, at(o, d, t + 2e-3)))).toBeLessThan(1e-3);
      }),
      { seed: 31, numRuns: 1500, endOnFailure: true },
    );
  });
});

test('a ray that misses the glass meets nothing, and one through its hole neither', () => {
  const glass = glassOf(shapeOf({ curvature: 0.2, conicConstant: -1, holeRadius: 0.3 }));
  expect(firstHitOfFace(glass, 0, 0, 1, 0, 0, -1, 0)).toBe(Infinity);
  expect(firstHitOfBody(glass, 0, 0, 1, 0, 0, -1, 0)).toBe(Infinity);
  expect(firstHitOfFace(glass, 0.5, 0, 1, 1, 0, 0, 0)).toBe(Infinity);
  expect(firstHitOfFace(glass, 0.5, 0, 1, 0, 0, -1, 0)).toBeCloseTo(1 - 0.1 * 0.25, 14);
  expect(firstHitOfBody(glass, 0.5, 0, 1, 0, 0, -1, 0)).toBeCloseTo(1 - glass.backZ, 14); // the back alone
});

test('the second sheet of a hyperboloid is not part of the mirror', () => {
  // K = −2.5, R = 5: the other sheet has its vertex at z = 2R/(1+K) < 0
  const glass = glassOf(shapeOf({ curvature: 0.2, conicConstant: -2.5 }));
  expect(firstHitOfFace(glass, 0.1, 0, -20, 0, 0, 1, 0)).toBeCloseTo(20 + sag(glass.shape, 0.1), 12);
  expect(firstHitOfFace(glass, 0.1, 0, -1, 0, 0, -1, 0)).toBe(Infinity);
});

test('rays enter the glass through its face or its body, wherever marching enters it', () => {
  fc.assert(
    fc.property(fc.oneof(conic, asphere), source, source, (shape, o, aim) => {
      const d: Vector = [aim[0] - o[0], aim[1] - o[1], aim[2] - o[2]];
      fc.pre(Math.hypot(...d) > 0.2 && !isInGlass(shape, ...o));
      const glass = glassOf(shape);
      const t = Math.min(firstHitOfFace(glass, ...o, ...d, 1e-9), firstHitOfBody(glass, ...o, ...d, 1e-9));
      const steps = 400;
      for (let i = 1; i <= steps; i++) {
        const s = i / steps;
        if (s < t - 1e-9) expect(isInGlass(shape, ...at(o, d, s))).toBe(false);
      }
    }),
    { seed: 32, numRuns: 2500, endOnFailure: true },
  );
});

describe('what may be left out', () => {
  test('a source that the glass cannot shade is never shaded from a point that faces it', () => {
    let shaded = 0;
    fc.assert(
      fc.property(fc.oneof(conic, asphere), source, unitInterval, unitInterval, (shape, o, u, v) => {
        const glass = glassOf(shape);
        const { point, normal } = onFace(shape, u, v);
        const d: Vector = [point[0] - o[0], point[1] - o[1], point[2] - o[2]];
        const faces = d[0] * normal[0] + d[1] * normal[1] + d[2] * normal[2] < 0;
        if (!faces || isInGlass(shape, ...o) || !isOccludedByGlass(glass, ...o, ...d)) return;
        shaded++;
        expect(canGlassShade(glass, ...o)).toBe(true);
      }),
      { seed: 33, numRuns: 20_000, endOnFailure: true },
    );
    expect(shaded).toBeGreaterThan(100); // the property saw real shades
  });

  test('a source in the bowl, over a flat or over a dome sees all that faces it', () => {
    fc.assert(
      fc.property(conic, source, unitInterval, unitInterval, (shape, o, u, v) => {
        fc.pre(above(shape, [o[0], o[1], o[2]]) > 1e-6);
        const { point, normal } = onFace(shape, u, v);
        const d: Vector = [point[0] - o[0], point[1] - o[1], point[2] - o[2]];
        fc.pre(-(d[0] * normal[0] + d[1] * normal[1] + d[2] * normal[2]) > 1e-6);
        expect(isOccludedByGlass(glassOf(shape), ...o, ...d)).toBe(false);
      }),
      { seed: 34, numRuns: 4000, endOnFailure: true },
    );
  });

  test('a source below the rim of a deep bowl is shaded by it', () => {
    const shape = shapeOf({ curvature: 0.8, conicConstant: 0, thickness: 0.05 });
    const glass = glassOf(shape);
    const { point } = onFace(shape, 0.9, 0);
    const o: Vector = [1.5, 0, 0.3];
    expect(canGlassShade(glass, ...o)).toBe(true);
    expect(isOccludedByGlass(glass, ...o, point[0] - o[0], point[1] - o[1], point[2] - o[2])).toBe(true);
  });
});
