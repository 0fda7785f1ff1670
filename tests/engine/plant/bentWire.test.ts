import { describe, expect, test } from 'vitest';
import type { FilamentSource } from '../../../engine/emission/filamentSource.ts';
import { gap, oneFilament, ROUNDING, vectorAt } from './samplePlant.ts';

type Point = readonly [number, number, number];

/** m, in the filament's own frame: x along its axis, z away from the mirror */
const CORNERS: readonly Point[] = [
  [-0.03, 0, 0],
  [0, 0.01, -0.02],
  [0.03, 0, 0],
  [0.05, 0, 0.01],
];
const PIECES_PER_RUN = 8;

const wireOf = (own: object, corners = CORNERS): FilamentSource =>
  oneFilament(
    [0.5, 0.2, 1],
    { emission: { law: 'straight wire' }, path: corners.map((corner) => corner.map((x) => `${x} m`)) },
    { ...own },
  ).source;

const minus = (a: readonly number[], b: readonly number[]): number[] => a.map((x, k) => x - (b[k] ?? 0));
const dot = (a: readonly number[], b: readonly number[]): number => a.reduce((sum, x, k) => sum + x * (b[k] ?? 0), 0);

describe('a bent wire', () => {
  const source = wireOf({ axis: [1, 0, 0] });
  const world = CORNERS.map(([x, y, z]) => [x + 0.5, y + 0.2, z + 1]);
  const lengths = world.slice(1).map((corner, i) => Math.hypot(...minus(corner, world[i] ?? [])));
  const total = lengths.reduce((sum, length) => sum + length, 0);

  test('is cut into eight pieces a run, whose shares sum to 1', () => {
    expect(source.count).toBe(PIECES_PER_RUN * 3);
    expect(Math.abs(source.weight.reduce((sum, w) => sum + w, 0) - 1)).toBeLessThan(ROUNDING);
    expect(source.weight.every((w) => w > 0)).toBe(true);
  });

  test('gives each run the share of its length', () => {
    lengths.forEach((length, run) => {
      const pieces = source.weight.subarray(run * PIECES_PER_RUN, (run + 1) * PIECES_PER_RUN);
      expect(Math.abs(pieces.reduce((sum, w) => sum + w, 0) - length / total)).toBeLessThan(ROUNDING);
    });
  });

  test('has its pieces on the wire, with axes along it', () => {
    for (let j = 0; j < source.count; j++) {
      const run = Math.floor(j / PIECES_PER_RUN);
      const [from, to, length] = [world[run] ?? [], world[run + 1] ?? [], lengths[run] ?? NaN];
      const along = minus(to, from).map((x) => x / length);
      const away = minus(vectorAt(source.position, j), from);
      const t = dot(away, along);
      expect(t > 0 && t < length).toBe(true);
      expect(
        gap(
          away,
          along.map((x) => t * x),
        ),
      ).toBeLessThan(ROUNDING);
      expect(gap(vectorAt(source.axis, j), along)).toBeLessThan(ROUNDING);
    }
  });

  test('has the centre of mass and the moment of inertia of the wire itself', () => {
    // closed forms of uniform rods: the middle, and L²/12 about it
    const center = [0, 1, 2].map((k) =>
      lengths.reduce((sum, l, i) => sum + (l / total) * (((world[i]?.[k] ?? 0) + (world[i + 1]?.[k] ?? 0)) / 2), 0),
    );
    const second = lengths.reduce((sum, length, i) => {
      const middle = world[i]?.map((x, k) => (x + (world[i + 1]?.[k] ?? 0)) / 2) ?? [];
      return sum + (length / total) * (length ** 2 / 12 + dot(minus(middle, center), minus(middle, center)));
    }, 0);
    const pieces = Array.from({ length: source.count }, (_, j) => vectorAt(source.position, j));
    const mean = [0, 1, 2].map((k) => pieces.reduce((sum, p, j) => sum + (source.weight[j] ?? 0) * (p[k] ?? 0), 0));
    const spread = pieces.reduce((sum, p, j) => sum + (source.weight[j] ?? 0) * dot(minus(p, mean), minus(p, mean)), 0);
    expect(gap(mean, center)).toBeLessThan(ROUNDING);
    expect(Math.abs(spread - second)).toBeLessThan(ROUNDING);
  });

  test.each([
    ['tangential', [-0.2, 0.5, 0]],
    ['radial', [0.5, 0.2, 0]],
    ['axial', [0, 0, 1]],
    [
      [0, 1, 1],
      [0, 1, 1],
    ],
  ])('turns with its axis: %s', (axis, along) => {
    const x = along.map((component) => component / Math.hypot(...along));
    const turned = wireOf({ axis });
    // the frame is right-handed and rigid: distances between pieces stay as they are
    for (let j = 1; j < turned.count; j++) {
      const before = Math.hypot(...minus(vectorAt(source.position, j), vectorAt(source.position, 0)));
      const after = Math.hypot(...minus(vectorAt(turned.position, j), vectorAt(turned.position, 0)));
      expect(Math.abs(after - before)).toBeLessThan(ROUNDING);
      const localX = dot(minus(vectorAt(turned.position, j), [0.5, 0.2, 1]), x);
      expect(Math.abs(localX - ((source.position[3 * j] ?? NaN) - 0.5))).toBeLessThan(ROUNDING);
    }
  });

  test('laid level keeps its own z away from the mirror', () => {
    const turned = wireOf({ axis: 'radial' });
    for (let j = 0; j < turned.count; j++)
      expect(Math.abs((turned.position[3 * j + 2] ?? NaN) - (source.position[3 * j + 2] ?? NaN))).toBeLessThan(
        ROUNDING,
      );
  });

  test('is not mirrored by turning it', () => {
    const [a, b, c] = [0, PIECES_PER_RUN, 2 * PIECES_PER_RUN];
    const volume = (of: FilamentSource): number => {
      const [u, v, w] = [a, b, c].map((j) => minus(vectorAt(of.position, j), vectorAt(of.position, of.count - 1)));
      const cross = (p: number[], q: number[]): number[] =>
        [0, 1, 2].map(
          (k) => (p[(k + 1) % 3] ?? 0) * (q[(k + 2) % 3] ?? 0) - (p[(k + 2) % 3] ?? 0) * (q[(k + 1) % 3] ?? 0),
        );
      return dot(cross(u ?? [], v ?? []), w ?? []);
    };
    expect(Math.abs(volume(source))).toBeGreaterThan(1e-8);
    for (const axis of ['tangential', 'radial', 'axial'])
      expect(Math.abs(volume(wireOf({ axis })) - volume(source))).toBeLessThan(ROUNDING);
  });
});
