import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import type { ObstacleDesign } from '../../../engine/design/designSchema.ts';
import { firstHitOfSolid, isInSolid, packSolids } from '../../../engine/geometry/solids.ts';
import type { Vector } from '../../support/plants.ts';

type Solid = Exclude<ObstacleDesign, { shape: 'mesh' }>;

const minus = (a: Vector, b: Vector): Vector => [a[0] - b[0], a[1] - b[1], a[2] - b[2]];
const dot = (a: Vector, b: Vector): number => a[0] * b[0] + a[1] * b[1] + a[2] * b[2];
const along = (o: Vector, d: Vector, t: number): Vector => [o[0] + t * d[0], o[1] + t * d[1], o[2] + t * d[2]];

/** World point in the frame of a box turned about x, then y, then z: the turns undone one by one, in reverse. */
function unturned([x, y, z]: Vector, [a, b, c]: Vector): Vector {
  const [x1, y1] = [x * Math.cos(c) + y * Math.sin(c), -x * Math.sin(c) + y * Math.cos(c)];
  const [x2, z2] = [x1 * Math.cos(b) - z * Math.sin(b), x1 * Math.sin(b) + z * Math.cos(b)];
  return [x2, y1 * Math.cos(a) + z2 * Math.sin(a), -y1 * Math.sin(a) + z2 * Math.cos(a)];
}

/** Height along an axis and distance from it. */
function axial(
  p: Vector,
  from: Vector,
  to: Vector,
): { readonly height: number; readonly radius: number; readonly length: number } {
  const axis = minus(to, from);
  const length = Math.hypot(...axis);
  const off = minus(p, from);
  const height = dot(off, axis) / length;
  return { height, radius: Math.sqrt(Math.max(0, dot(off, off) - height * height)), length };
}

/** Below zero inside a closed solid, above it outside; written from the solids' definitions alone. */
function outside(solid: Solid, p: Vector): number {
  switch (solid.shape) {
    case 'box': {
      const local = unturned(minus(p, solid.center), solid.rotation ?? [0, 0, 0]);
      return Math.max(...local.map((x, k) => Math.abs(x) - solid.size[k as 0] / 2));
    }
    case 'sphere':
      return Math.hypot(...minus(p, solid.center)) - solid.diameter / 2;
    case 'cylinder': {
      const { height, radius, length } = axial(p, solid.from, solid.to);
      return Math.max(radius - solid.diameter / 2, -height, height - length);
    }
    case 'cone frustum': {
      const { height, radius, length } = axial(p, solid.from, solid.to);
      const wall = (solid.fromDiameter + ((solid.toDiameter - solid.fromDiameter) * height) / length) / 2;
      return Math.max(radius - wall, -height, height - length);
    }
    default:
      throw new Error(`${solid.shape} has no inside`);
  }
}

const coordinate = fc.integer({ min: -1000, max: 1000 }).map((mm) => mm / 1000);
const vector = fc.tuple(coordinate, coordinate, coordinate);
const size = fc.integer({ min: 50, max: 1200 }).map((mm) => mm / 1000);
const angle = fc.double({ min: -3, max: 3, noNaN: true });
const ends = fc.tuple(vector, vector).filter(([a, b]) => Math.hypot(...minus(a, b)) > 0.05);
const unit = vector
  .filter((v) => Math.hypot(...v) > 0.1)
  .map((v): [number, number, number] => {
    const length = Math.hypot(...v);
    return [v[0] / length, v[1] / length, v[2] / length];
  });
const name = 'thing';

const closed: fc.Arbitrary<Solid> = fc.oneof(
  fc.record({
    shape: fc.constant('box' as const),
    name: fc.constant(name),
    center: vector,
    size: fc.tuple(size, size, size),
    rotation: fc.tuple(angle, angle, angle),
  }),
  fc.record({ shape: fc.constant('sphere' as const), name: fc.constant(name), center: vector, diameter: size }),
  fc.tuple(ends, size).map(([[from, to], diameter]) => ({ shape: 'cylinder' as const, name, from, to, diameter })),
  fc.tuple(ends, fc.oneof(size, fc.constant(0)), size).map(([[from, to], fromDiameter, toDiameter]) => ({
    shape: 'cone frustum' as const,
    name,
    from,
    to,
    fromDiameter,
    toDiameter,
  })),
);

const hit = (solid: Solid, o: Vector, d: Vector, tMin = 0): number =>
  firstHitOfSolid(packSolids([solid]), 0, ...o, ...d, tMin);

/** Surfaces are met to rounding; a cone's tip and a grazing ray amplify it: worst of the property below 4e-10. */
const ON_SURFACE = 1e-8;
/** Rounding of a double-precision rotation over 2 m, twentyfold. */
const TURNED = 1e-14;
const MARCH = 400;
const REACH = 6;

test('a ray meets a closed solid where marching along it first changes sides', () => {
  fc.assert(
    fc.property(closed, vector, unit, (solid, o, d) => {
      const t = hit(solid, o, d);
      fc.pre(Math.abs(outside(solid, o)) > ON_SURFACE); // a ray that starts on the surface may be counted either way
      const starts = outside(solid, o) < 0;
      if (t < Infinity) expect(Math.abs(outside(solid, along(o, d, t)))).toBeLessThan(ON_SURFACE);
      for (let i = 1; i <= MARCH; i++) {
        const s = (REACH * i) / MARCH;
        const f = outside(solid, along(o, d, s));
        if (s < t && Math.abs(f) > ON_SURFACE) expect(f < 0).toBe(starts); // nothing is passed over
      }
      // just beyond the hit lies the other side, unless the ray only touches
      if (t < Infinity) {
        const beyond = outside(solid, along(o, d, t + 1e-6));
        if (Math.abs(beyond) > ON_SURFACE) expect(beyond < 0).toBe(!starts);
      }
      expect(isInSolid(packSolids([solid]), 0, ...o)).toBe(starts);
    }),
    { seed: 21, numRuns: 3000, endOnFailure: true },
  );
});

test('a hit does not depend on the length of the direction, and tMin passes hits over', () => {
  fc.assert(
    fc.property(closed, vector, unit, fc.double({ min: 0.01, max: 100, noNaN: true }), (solid, o, d, scale) => {
      const t = hit(solid, o, d);
      const scaled = hit(solid, o, [d[0] * scale, d[1] * scale, d[2] * scale]) * scale;
      if (t === Infinity) return;
      if (Math.abs(scaled - t) > ON_SURFACE) {
        // only a ray that touches an edge may be decided either way
        expect(Math.abs(outside(solid, along(o, d, t + 1e-6)))).toBeLessThan(1e-5);
        return;
      }
      const next = hit(solid, o, d, t * (1 + 1e-9));
      expect(next).toBeGreaterThan(t);
    }),
    { seed: 22, numRuns: 2000, endOnFailure: true },
  );
});

const sheets: fc.Arbitrary<Solid> = fc.oneof(
  fc.tuple(ends, size).map(([[from, to], diameter]) => ({ shape: 'tube' as const, name, from, to, diameter })),
  fc
    .tuple(vector, unit, size)
    .map(([center, normal, diameter]) => ({ shape: 'disc' as const, name, center, normal, diameter })),
  fc.tuple(vector, unit, size).map(([center, normal, outerDiameter]) => ({
    shape: 'annulus' as const,
    name,
    center,
    normal,
    outerDiameter,
    innerDiameter: outerDiameter / 3,
  })),
);

/** Signed distance from a sheet's carrier, and whether a point of the carrier belongs to the sheet (by how much). */
function carrier(sheet: Solid, p: Vector): { readonly side: number; readonly within: number } {
  if (sheet.shape === 'tube') {
    const { height, radius, length } = axial(p, sheet.from, sheet.to);
    return { side: radius - sheet.diameter / 2, within: Math.min(height, length - height) };
  }
  if (sheet.shape !== 'disc' && sheet.shape !== 'annulus') throw new Error('not a sheet');
  const off = minus(p, sheet.center);
  const side = dot(off, sheet.normal);
  const radius = Math.sqrt(Math.max(0, dot(off, off) - side * side));
  const [inner, outer] =
    sheet.shape === 'disc' ? [-1, sheet.diameter / 2] : [sheet.innerDiameter / 2, sheet.outerDiameter / 2];
  return { side, within: Math.min(outer - radius, radius - inner) };
}

test('a ray meets a sheet where marching along it first crosses it', () => {
  fc.assert(
    fc.property(sheets, vector, unit, (sheet, o, d) => {
      const t = hit(sheet, o, d);
      if (t < Infinity) {
        const { side, within } = carrier(sheet, along(o, d, t));
        expect(Math.abs(side)).toBeLessThan(ON_SURFACE);
        expect(within).toBeGreaterThan(-ON_SURFACE);
      }
      let before = carrier(sheet, o).side;
      for (let i = 1; i <= MARCH; i++) {
        const s = (REACH * i) / MARCH;
        const now = carrier(sheet, along(o, d, s));
        if (now.side > 0 !== before > 0) {
          // bisect the crossing: if it lies well within the sheet, the hit is there or nearer
          let [from, to] = [s - REACH / MARCH, s];
          for (let k = 0; k < 50; k++) {
            const middle = (from + to) / 2;
            if (carrier(sheet, along(o, d, middle)).side > 0 === before > 0) from = middle;
            else to = middle;
          }
          if (carrier(sheet, along(o, d, from)).within > ON_SURFACE) {
            expect(t).toBeLessThan(to + ON_SURFACE);
            break;
          }
        }
        before = now.side;
      }
      expect(isInSolid(packSolids([sheet]), 0, ...o)).toBe(false);
    }),
    { seed: 23, numRuns: 3000, endOnFailure: true },
  );
});

test('a solid that leans by a milliradian leans, and is turned to rounding', () => {
  for (const lean of [1e-3, 1e-5, 1e-8, 0.3, 1.2, Math.PI - 1e-3]) {
    const [sin, cos] = [Math.sin(lean), Math.cos(lean)];
    // a disc through the origin that leans about y: straight above x the plane stands at z = −x tan(lean)
    const disc: Solid = { shape: 'disc', name, center: [0, 0, 0], normal: [sin, 0, cos], diameter: 4 };
    const t = hit(disc, [0.4 * Math.abs(cos), 0.1, 2], [0, 0, -1]);
    expect(Math.abs(t - (2 + (0.4 * Math.abs(cos) * sin) / cos))).toBeLessThan(TURNED);
    // the far end of a rod 2 m long
    const rod: Solid = { shape: 'cylinder', name, from: [0, 0, 0], to: [2 * sin, 0, 2 * cos], diameter: 0.2 };
    const end = hit(rod, [2 * sin, 3, 1.999 * cos], [0, -1, 0]);
    const off = 2 * sin * cos - 1.999 * cos * sin; // of the ray's plane from the rod's axis
    expect(Math.abs(end - (3 - Math.sqrt(0.01 - off * off)))).toBeLessThan(TURNED);
  }
});

describe('simple rays meet simple solids at simple places', () => {
  const up: Vector = [0, 0, 1];
  test.each<[string, Solid, Vector, Vector, number]>([
    [
      'a box from below',
      { shape: 'box', name, center: [0, 0, 2], size: [1, 1, 1], rotation: undefined },
      [0, 0, 0],
      up,
      1.5,
    ],
    [
      'a box from inside',
      { shape: 'box', name, center: [0, 0, 2], size: [1, 1, 1], rotation: undefined },
      [0, 0, 2],
      up,
      0.5,
    ],
    [
      'a box beside the ray',
      { shape: 'box', name, center: [0.6, 0, 2], size: [1, 1, 1], rotation: undefined },
      [0, 0, 0],
      up,
      Infinity,
    ],
    [
      'a box turned by 45° about z',
      { shape: 'box', name, center: [2, 0, 0], size: [1, 1, 1], rotation: [0, 0, Math.PI / 4] },
      [0, 0, 0],
      [1, 0, 0],
      2 - Math.SQRT1_2,
    ],
    [
      'a plate turned by 90° about x',
      { shape: 'box', name, center: [0, 2, 0], size: [1, 1, 0.2], rotation: [Math.PI / 2, 0, 0] },
      [0, 0, 0],
      [0, 1, 0],
      1.9,
    ],
    ['a sphere', { shape: 'sphere', name, center: [0, 0, 3], diameter: 2 }, [0, 0, 0], up, 2],
    ['a sphere behind', { shape: 'sphere', name, center: [0, 0, -3], diameter: 2 }, [0, 0, 0], up, Infinity],
    [
      'a cylinder’s end',
      { shape: 'cylinder', name, from: [0, 0, 1], to: [0, 0, 2], diameter: 1 },
      [0.3, 0.3, 0],
      up,
      1,
    ],
    [
      'a cylinder’s side',
      { shape: 'cylinder', name, from: [0, 0, 1], to: [0, 0, 2], diameter: 1 },
      [-2, 0, 1.5],
      [1, 0, 0],
      1.5,
    ],
    [
      'a tube along its axis',
      { shape: 'tube', name, from: [0, 0, 1], to: [0, 0, 2], diameter: 1 },
      [0.3, 0.3, 0],
      up,
      Infinity,
    ],
    [
      'a tube through its open end',
      { shape: 'tube', name, from: [0, 0, 1], to: [0, 0, 3], diameter: 1 },
      [0, 0, 0],
      [0.3, 0, 1],
      0.5 / 0.3,
    ],
    [
      'a cone’s flank',
      { shape: 'cone frustum', name, from: [0, 0, 0], to: [0, 0, 2], fromDiameter: 2, toDiameter: 0 },
      [-2, 0, 1],
      [1, 0, 0],
      1.5,
    ],
    [
      'a cone above its tip',
      { shape: 'cone frustum', name, from: [0, 0, 0], to: [0, 0, 2], fromDiameter: 2, toDiameter: 0 },
      [-2, 0, 2.5],
      [1, 0, 0],
      Infinity,
    ],
    ['a disc', { shape: 'disc', name, center: [0, 0, 1], normal: up, diameter: 1 }, [0.4, 0, 0], up, 1],
    [
      'a disc edge-on',
      { shape: 'disc', name, center: [0, 0, 1], normal: up, diameter: 1 },
      [-2, 0, 1],
      [1, 0, 0],
      Infinity,
    ],
    [
      'an annulus',
      { shape: 'annulus', name, center: [0, 0, 1], normal: up, innerDiameter: 0.4, outerDiameter: 1 },
      [0.4, 0, 0],
      up,
      1,
    ],
    [
      'an annulus through its hole',
      { shape: 'annulus', name, center: [0, 0, 1], normal: up, innerDiameter: 0.4, outerDiameter: 1 },
      [0.1, 0, 0],
      up,
      Infinity,
    ],
  ])('%s', (_, solid, o, d, t) => {
    const found = hit(solid, o, d);
    if (t === Infinity) expect(found).toBe(Infinity);
    else expect(Math.abs(found - t)).toBeLessThan(1e-12);
  });
});
