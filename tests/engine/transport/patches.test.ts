import { xoroshiro128plus } from 'pure-rand/generator/xoroshiro128plus';
import { uniformFloat64 } from 'pure-rand/distribution/uniformFloat64';
import { expect, test } from 'vitest';
import { createFace } from '../../../engine/geometry/face.ts';
import type { OrientedPoints } from '../../../engine/geometry/orientedPoints.ts';
import { RUN } from '../../../engine/transport/depositKernel.ts';
import { LEAF, NODES, patchesOf } from '../../../engine/transport/patches.ts';
import { planeReceivers, shapeOf } from '../../support/plants.ts';

/** Rounding of a distance of a few metres. */
const ROUNDING = 1e-14;

/** Points strewn over a square of 2 m; `spread` 0 puts all of them in one place. */
function strewn(count: number, spread = 1): OrientedPoints {
  const random = xoroshiro128plus(5);
  const even = (): number => spread * (2 * uniformFloat64(random) - 1);
  return planeReceivers(Array.from({ length: count }, () => [even(), even()] as const));
}

const distance = ({ position }: OrientedPoints, i: number, balls: Float64Array, slot: number): number =>
  Math.hypot(
    position[3 * i]! - balls[4 * slot]!,
    position[3 * i + 1]! - balls[4 * slot + 1]!,
    position[3 * i + 2]! - balls[4 * slot + 2]!,
  );

test.each([
  ['one point', strewn(1)],
  ['a leaf', strewn(LEAF)],
  ['one more than a leaf', strewn(LEAF + 1)],
  ['a run', strewn(RUN)],
  ['one more than a run', strewn(RUN + 1)],
  ['three runs and some', strewn(3 * RUN + 77)],
  ['points in one place', strewn(RUN, 0)],
  ['a face', createFace(shapeOf({ curvature: 0.1, rimRadius: 1.3, holeRadius: 0.2 }), 5000).points],
])('%s: each node holds its points, its halves share them out, leaves are small', (_, points) => {
  const { members, from, to, balls, whole } = patchesOf(points);
  for (let begin = 0; begin < points.count; begin += RUN) {
    const root = NODES * (begin / RUN);
    const end = Math.min(points.count, begin + RUN);
    expect([from[root + 1], to[root + 1]]).toEqual([begin, end]);
    expect([...members.subarray(begin, end)].toSorted((p, q) => p - q)).toEqual(
      Array.from({ length: end - begin }, (__, k) => begin + k),
    );
    const open = [1];
    for (let node = open.pop(); node !== undefined; node = open.pop()) {
      const slot = root + node;
      for (let k = from[slot]!; k < to[slot]!; k++) {
        expect(distance(points, members[k]!, balls, slot)).toBeLessThanOrEqual(balls[4 * slot + 3]! + ROUNDING);
        expect(distance(points, members[k]!, whole, 0)).toBeLessThanOrEqual(whole[3]! + ROUNDING);
      }
      if (to[slot]! - from[slot]! <= LEAF) continue;
      const [left, right] = [root + 2 * node, root + 2 * node + 1];
      expect([from[left], to[left], to[right]]).toEqual([from[slot], from[right], to[slot]]);
      expect(to[left]).toBeGreaterThan(from[left]!);
      expect(to[right]).toBeGreaterThan(from[right]!);
      open.push(2 * node, 2 * node + 1);
    }
  }
});

test('halving along the longest side makes neighbourhoods: a leaf spans its share of the area, twofold', () => {
  const points = strewn(RUN);
  const { from, to, balls } = patchesOf(points);
  const radii = Array.from(from, (begin, slot) => (to[slot]! - begin === LEAF ? balls[4 * slot + 3]! : 0));
  // 4 m² shared by RUN / LEAF squares, whose half diagonal is this
  expect(Math.max(...radii)).toBeLessThan(2 * Math.sqrt((4 * LEAF) / RUN / 2));
});

test('a set of points is divided once, but a few points are looked at afresh', () => {
  const many = strewn(RUN);
  expect(patchesOf(many)).toBe(patchesOf(many));
  const few = strewn(1);
  const before = patchesOf(few).whole[0];
  few.position[0]! += 1;
  expect(patchesOf(few).whole[0]).toBe(before! + 1);
});
