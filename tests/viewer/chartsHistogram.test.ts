import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { createFace } from '../../engine/geometry/face.ts';
import { areaShares, binEdges, clearArea, type ClearArea } from '../../viewer/charts/areaShares.ts';
import { shapeOf } from '../support/plants.ts';

/** Sums of a few thousand shares. */
const ROUNDING = 1e-12;
/** Counting centroids of 24² parts of each triangle: measured 1.2e-5 at most. */
const COUNTING = 5e-5;
/** 20 000 points: chords instead of arcs at the rim; measured 2.4e-5 at most. */
const CHORDS = 1e-4;
const PARTS = 24;

const disc = createFace(shapeOf(), 1500);
const total = (bins: readonly { share: number }[]): number => bins.reduce((sum, { share }) => sum + share, 0);

/** Shares by cutting each triangle into PARTS² equal ones and counting those whose middle lies in a bin. */
function countedShares({ nodes, areas }: ClearArea, field: Float64Array, edges: readonly number[]): number[] {
  const sums = edges.slice(1).map(() => 0);
  const all = areas.reduce((sum, area) => sum + area, 0);
  areas.forEach((area, t) => {
    const [f = 0, g = 0, h = 0] = [0, 1, 2].map((k) => field[nodes[3 * t + k]!]!);
    for (let i = 0; i < PARTS; i++) {
      for (let j = 0; i + j < PARTS; j++) {
        for (const third of i + j + 1 < PARTS ? [1 / 3, 2 / 3] : [1 / 3]) {
          const value = f + ((i + third) / PARTS) * (g - f) + ((j + third) / PARTS) * (h - f);
          const bin = edges.findLastIndex((edge) => edge <= value);
          sums[Math.min(bin, sums.length - 1)]! += area / (PARTS * PARTS * all);
        }
      }
    }
  });
  return sums;
}

describe('the area by thickness', () => {
  test('sums to all of the area, whatever the field and the bins', () => {
    const area = clearArea(disc);
    fc.assert(
      fc.property(
        fc.integer({ min: 1, max: 1e6 }),
        fc.uniqueArray(fc.double({ min: -2, max: 2, noNaN: true }), { minLength: 2, maxLength: 20 }),
        (seed, edges) => {
          const field = Float64Array.from({ length: disc.points.count }, (_, i) => Math.sin(seed * (i + 1)) * 1.5);
          const bins = areaShares(
            area,
            field,
            edges.toSorted((p, q) => p - q),
          );
          expect(Math.abs(total(bins) - 1)).toBeLessThan(ROUNDING);
          for (const { share } of bins) expect(share).toBeGreaterThanOrEqual(-ROUNDING);
        },
      ),
      { seed: 7, numRuns: 60 },
    );
  });

  test('equals a count of small parts for a linear field', () => {
    const small = createFace(shapeOf({ holeRadius: 0.3 }), 500);
    const { position } = small.points;
    const field = Float64Array.from(
      { length: small.points.count },
      (_, i) => 2 * position[3 * i]! - position[3 * i + 1]!,
    );
    const edges = [-2.4, -1.1, -0.3, 0, 0.05, 0.9, 2.4];
    const area = clearArea(small);
    const counted = countedShares(area, field, edges);
    areaShares(area, field, edges).forEach(({ share }, i) => {
      expect(Math.abs(share - counted[i]!)).toBeLessThan(COUNTING);
    });
  });

  test('of a coordinate over a disc is made of circular segments', () => {
    // segment beyond a chord at distance h from the middle: arccos h − h √(1 − h²), unit circle (from memory of
    // Bronshtein, Semendyayev: Handbook of Mathematics, plane figures)
    const beyond = (h: number): number => (Math.acos(h) - h * Math.sqrt(1 - h * h)) / Math.PI;
    const fine = createFace(shapeOf(), 20_000);
    const x = Float64Array.from({ length: fine.points.count }, (_, i) => fine.points.position[3 * i]!);
    const edges = [-1, -0.7, -0.2, 0, 0.5, 0.9, 1];
    areaShares(clearArea(fine), x, edges).forEach(({ low, high, share }) => {
      expect(Math.abs(share - (beyond(low) - beyond(high)))).toBeLessThan(CHORDS);
    });
  });

  test('counts the clear aperture alone', () => {
    const shape = shapeOf({ holeRadius: 0.2, clearInnerRadius: 0.4, clearOuterRadius: 0.9 });
    const face = createFace(shape, 2000);
    const { position, count } = face.points;
    const radius = Float64Array.from({ length: count }, (_, i) => Math.hypot(position[3 * i]!, position[3 * i + 1]!));
    const [inner, clear, outer] = areaShares(clearArea(face), radius, [0, 0.39, 0.9 + ROUNDING, 1]);
    expect([inner?.share, outer?.share]).toEqual([0, 0]);
    expect(Math.abs((clear?.share ?? 0) - 1)).toBeLessThan(ROUNDING);
  });

  test('puts an even coat into one bin, on an edge too', () => {
    const field = new Float64Array(disc.points.count).fill(100);
    const shares = (edges: number[]): number[] => areaShares(clearArea(disc), field, edges).map(({ share }) => share);
    expect(shares([99, 100, 101]).map((share) => Math.round(1e9 * share) / 1e9)).toEqual([0, 1]);
    expect(shares([99, 100]).map((share) => Math.round(1e9 * share) / 1e9)).toEqual([1]);
  });

  test('has round, rising edges around the range', () => {
    const edges = binEdges(69.58, 124.97, 0.25);
    expect(edges[0]).toBeLessThanOrEqual(69.58);
    expect(edges.at(-1)).toBeGreaterThanOrEqual(124.97);
    expect(edges.length).toBeGreaterThan(12);
    expect(edges).toEqual(edges.map((edge) => Math.round(edge / 2) * 2));
    const even = binEdges(100, 100, 0.2);
    expect(even[0]).toBeLessThan(100);
    expect(even.at(-1)).toBeGreaterThan(100);
  });
});
