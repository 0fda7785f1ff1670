import { xoroshiro128plus } from 'pure-rand/generator/xoroshiro128plus';
import { uniformFloat64 } from 'pure-rand/distribution/uniformFloat64';
import { describe, expect, test } from 'vitest';
import { CLEAR, HIDDEN, MIXED, type Standing } from '../../../engine/geometry/beam.ts';
import { END_GAP } from '../../../engine/geometry/scene.ts';
import {
  firstHitOfSolid,
  packSolids,
  standingOfSolid,
  type Solids,
  type Vector,
} from '../../../engine/geometry/solids.ts';
import { randomSolid, type SolidDesign } from '../../support/randomSolids.ts';

const SHAPES = ['box', 'cylinder', 'tube', 'cone frustum', 'disc', 'annulus', 'sphere'] as const;

/** A place in or on a ball; every other one lies on its surface, where a line goes astray first. */
function placeInBall(even: () => number, center: Vector, radius: number): Vector {
  const d: Vector = [even(), even(), even()];
  const length = Math.max(1e-3, Math.hypot(...d));
  const r = radius * (even() > 0 ? 1 : Math.abs(even()));
  return [center[0] + (r * d[0]) / length, center[1] + (r * d[1]) / length, center[2] + (r * d[2]) / length];
}

function isHidden(solids: Solids, from: Vector, to: Vector): boolean {
  const way = [to[0] - from[0], to[1] - from[1], to[2] - from[2]] as const;
  return firstHitOfSolid(solids, 0, ...from, ...way, END_GAP) < 1 - END_GAP;
}

const standing = (solids: Solids, from: Vector, fromRadius: number, to: Vector, toRadius: number): Standing =>
  standingOfSolid(solids, 0, Float64Array.of(...from, fromRadius, ...to, toRadius));

describe.each(SHAPES)('what is said of a whole beam holds for its lines: %s', (shape) => {
  test('in random places', () => {
    const random = xoroshiro128plus(31);
    const even = (): number => 2 * uniformFloat64(random) - 1;
    const seen = { [CLEAR]: 0, [MIXED]: 0, [HIDDEN]: 0 };
    let wrong = 0;
    for (let k = 0; k < 20_000; k++) {
      const solids = packSolids([randomSolid(shape, even)]);
      const [from, to]: [Vector, Vector] = [
        [even(), even(), 1 + even()],
        [even(), even(), -1 + even()],
      ];
      // now and then a point, or a ball so small that most beams can be decided
      const [fromRadius, toRadius] = [Math.max(0, 0.2 * even()), Math.max(0, 0.4 * even())];
      const found = standing(solids, from, fromRadius, to, toRadius);
      seen[found]++;
      if (found === MIXED) continue;
      for (let line = 0; line < 10; line++) {
        const [p, q] = [placeInBall(even, from, fromRadius), placeInBall(even, to, toRadius)];
        if (isHidden(solids, p, q) !== (found === HIDDEN)) wrong++;
      }
    }
    expect(wrong).toBe(0);
    expect(seen[CLEAR]).toBeGreaterThan(5000);
    // an open tube is never said to hide
    if (shape !== 'tube') expect(seen[HIDDEN]).toBeGreaterThan(100);
  });

  test('a beam without width is decided as its line is, but close to an edge', () => {
    const random = xoroshiro128plus(32);
    const even = (): number => 2 * uniformFloat64(random) - 1;
    let [open, openHidden, wrong] = [0, 0, 0];
    for (let k = 0; k < 5000; k++) {
      const solids = packSolids([randomSolid(shape, even)]);
      const [from, to]: [Vector, Vector] = [
        [even(), even(), 2.5],
        [even(), even(), -2.5],
      ];
      const found = standing(solids, from, 0, to, 0);
      const hidden = isHidden(solids, from, to);
      if (found === MIXED && hidden) openHidden++;
      else if (found === MIXED) open++;
      else if (hidden !== (found === HIDDEN)) wrong++;
    }
    expect(wrong).toBe(0);
    // lines within CLEARANCE, 1 µm, of an outline some metres long, on 4 m²: one in a million
    expect(open).toBe(0);
    // an open tube is never said to hide
    if (shape !== 'tube') expect(openHidden).toBe(0);
  });
});

describe('special beams', () => {
  const pack = (solid: SolidDesign): Solids => packSolids([solid]);
  const ball = pack({ shape: 'sphere', name: 'x', center: [0, 0, 0], diameter: 1 });
  const box = pack({ shape: 'box', name: 'x', center: [0, 0, 0], size: [1, 1, 1], rotation: undefined });
  const drum = pack({ shape: 'cylinder', name: 'x', from: [0, 0, -0.5], to: [0, 0, 0.5], diameter: 1 });
  const ring = pack({
    shape: 'annulus',
    name: 'x',
    center: [0, 0, 0],
    normal: [0, 0, 1],
    innerDiameter: 0.4,
    outerDiameter: 1,
  });
  const solids = [['ball', ball] as const, ['box', box] as const, ['drum', drum] as const];

  test.each(solids)('from inside or at the surface nothing is decided: %s', (_, solid) => {
    expect(standing(solid, [0.1, 0, 0], 0, [0, 0, -3], 0.1)).toBe(MIXED);
    expect(standing(solid, [0, 0, 0.5], 0, [0, 0, -3], 0.1)).toBe(MIXED);
    expect(standing(solid, [0, 0, 0.6], 0.2, [0, 0, -3], 0.1)).toBe(MIXED);
  });

  test.each([...solids, ['ring', ring] as const])(
    'behind the source or behind the points nothing is hidden: %s',
    (_, solid) => {
      expect(standing(solid, [0, 0, 2], 0.1, [0, 0, 5], 1)).toBe(CLEAR);
      expect(standing(solid, [0, 0, 5], 0.1, [0, 0, 2], 0.5)).toBe(CLEAR);
    },
  );

  test.each(solids)('a small patch far behind is hidden whole, a large one in part: %s', (_, solid) => {
    expect(standing(solid, [0.1, 0, 3], 0.1, [0, 0.1, -3], 0.2)).toBe(HIDDEN);
    expect(standing(solid, [0.1, 0, 3], 0.1, [0, 0.1, -3], 2)).toBe(MIXED);
  });

  test('a ring is clear through its hole, hides behind its face, and is open to both at its edge', () => {
    expect(standing(ring, [0, 0, 2], 0.02, [0, 0, -2], 0.1)).toBe(CLEAR);
    expect(standing(ring, [0.35, 0, 2], 0.02, [0.35, 0, -2], 0.1)).toBe(HIDDEN);
    expect(standing(ring, [0.2, 0, 2], 0.02, [0.2, 0, -2], 0.1)).toBe(MIXED);
  });

  test('a tube around everything is clear of it', () => {
    const tube = pack({ shape: 'tube', name: 'x', from: [0, 0, -1], to: [0, 0, 2], diameter: 4 });
    expect(standing(tube, [1.5, 0, 1], 0.1, [0, 0, 0], 1.5)).toBe(CLEAR);
    expect(standing(tube, [1.5, 0, 1], 0.1, [0, 0, 0], 2.1)).toBe(MIXED);
  });

  test('a beam whose points enclose the source is not decided', () => {
    expect(standing(ball, [0.9, 0, 0], 0, [0.9, 0, 0.1], 2)).toBe(MIXED);
  });
});
