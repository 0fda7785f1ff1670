/** Outlines of obstacles in a side view. The layout of a record is documented in engine/geometry/solids.ts. */
import { STRIDE, type Solids } from '../../engine/geometry/solids.ts';
import type { Plant } from '../../engine/index.ts';

type Point = readonly [number, number];
type Vector = readonly [number, number, number];

const AROUND = 48;
/** Vertices of a mesh that an outline is made from, at most. */
const MOST_VERTICES = 20_000;

const circle = (radius: number, z: number): Vector[] =>
  Array.from({ length: AROUND }, (_, k) => {
    const angle = (2 * Math.PI * k) / AROUND;
    return [radius * Math.cos(angle), radius * Math.sin(angle), z];
  });

/** Points whose hull is the solid, in its own frame. */
function localPoints(kind: number, [s0 = 0, s1 = 0, s2 = 0]: readonly number[]): Vector[] {
  if (kind === 0)
    return [-1, 1].flatMap((i) => [-1, 1].flatMap((j) => [-1, 1].map((k): Vector => [i * s0, j * s1, k * s2])));
  if (kind === 1) return [...circle(s1, 0), ...circle(s2, s0)];
  if (kind === 2) return circle(s1, 0);
  return Array.from({ length: AROUND / 2 + 1 }, (_, k) => {
    const polar = (2 * Math.PI * k) / AROUND;
    return circle(s0 * Math.sin(polar), s0 * Math.cos(polar));
  }).flat();
}

function solidPoints({ records }: Solids, i: number): Vector[] {
  const [kind = 0, ...rest] = records.subarray(STRIDE * i, STRIDE * (i + 1));
  const [a, b, c, d, e, f, g, h, k, x, y, z] = rest as [
    ...[number, number, number, number, number, number],
    ...[number, number, number, number, number, number],
  ];
  return localPoints(kind, rest.slice(12, 16)).map(([p, q, r]) => [
    x + a * p + d * q + g * r,
    y + b * p + e * q + h * r,
    z + c * p + f * q + k * r,
  ]);
}

/** Convex hull, counterclockwise (monotone chain, A. M. Andrew 1979). */
export function hullOf(points: readonly Point[]): Point[] {
  const sorted = points.toSorted(([ax, ay], [bx, by]) => ax - bx || ay - by);
  const half = (from: readonly Point[]): Point[] => {
    const chain: Point[] = [];
    for (const p of from) {
      while (chain.length > 1 && !turnsLeft(chain.at(-2)!, chain.at(-1)!, p)) chain.pop();
      chain.push(p);
    }
    return chain.slice(0, -1);
  };
  return [...half(sorted), ...half(sorted.toReversed())];
}

const turnsLeft = ([ax, ay]: Point, [bx, by]: Point, [cx, cy]: Point): boolean =>
  (bx - ax) * (cy - ay) - (by - ay) * (cx - ax) > 0;

/** The outline of each obstacle, projected: exact for convex ones, the hull of others. */
export function silhouettes({ solids, meshes }: Plant, project: (point: Vector) => Point): Point[][] {
  const ofSolids = Array.from({ length: solids.count }, (_, i) => solidPoints(solids, i));
  const ofMeshes = meshes.map(({ position }) => {
    const count = position.length / 3;
    const step = Math.max(1, Math.ceil(count / MOST_VERTICES));
    return Array.from({ length: Math.ceil(count / step) }, (_, k): Vector => {
      const o = 3 * k * step;
      return [position[o]!, position[o + 1]!, position[o + 2]!];
    });
  });
  return [...ofSolids, ...ofMeshes].map((points) => hullOf(points.map(project)));
}
