/** The difference of two coats on the same mirror. */
import type { Coat } from '../../engine/index.ts';
import { faceTriangles, type Face } from '../../engine/geometry/face.ts';
import type { MirrorShape } from '../../engine/geometry/mirrorShape.ts';

export type Difference =
  | {
      readonly ok: true;
      /** [points of a] a − b, nm */
      readonly values: Float64Array;
      /** [points of a] the thicker of both, m */
      readonly thicker: Float64Array;
    }
  | { readonly ok: false; readonly reason: string };

/** What makes two mirrors differ for a map, in words. */
function differingPart(a: MirrorShape, b: MirrorShape): string | null {
  const parts: readonly (readonly [string, (shape: MirrorShape) => unknown])[] = [
    ['outer diameter', ({ rimRadius }) => rimRadius],
    ['hole', ({ holeRadius }) => holeRadius],
    ['outline', ({ cornerAngle }) => cornerAngle],
    ['off-axis distance', ({ centerX }) => centerX],
    ['curve', ({ curvature, conicConstant, aspheric }) => JSON.stringify([curvature, conicConstant, aspheric])],
  ];
  return parts.find(([, of]) => of(a) !== of(b))?.[0] ?? null;
}

function hasSamePoints(a: Face, b: Face): boolean {
  if (a === b) return true;
  const [p, q] = [a.points.position, b.points.position];
  return p.length === q.length && p.every((value, i) => value === q[i]);
}

/** How far outside a triangle a point may lie, as a share of its height: rim points lie outside the chords of another grid. */
const OUTSIDE = 0.5;

/** Points of a face sorted into square boxes, seen face-on. */
function boxesOf({ points: { count, position } }: Face, width: number): Map<string, number[]> {
  const boxes = new Map<string, number[]>();
  for (let i = 0; i < count; i++) {
    const key = `${Math.floor(position[3 * i]! / width)} ${Math.floor(position[3 * i + 1]! / width)}`;
    const box = boxes.get(key);
    if (box) box.push(i);
    else boxes.set(key, [i]);
  }
  return boxes;
}

/**
 * A field of one face at the points of another face of the same mirror, linear in each triangle.
 *
 * @param field [points of `from`]
 * @returns [points of `to`]
 */
export function interpolated(from: Face, field: Float64Array, to: Face): Float64Array {
  const values = new Float64Array(to.points.count).fill(NaN);
  const best = new Float64Array(to.points.count).fill(-OUTSIDE);
  const width = (2 * from.grid.shape.rimRadius) / Math.sqrt(to.points.count);
  const boxes = boxesOf(to, width);
  const triangles = faceTriangles(from.cells);
  const [p, q] = [from.points.position, to.points.position];
  for (let t = 0; t < triangles.length; t += 3) {
    const [a, b, c] = [triangles[t]!, triangles[t + 1]!, triangles[t + 2]!];
    const [ax, ay] = [p[3 * a]!, p[3 * a + 1]!];
    const [ux, uy, vx, vy] = [p[3 * b]! - ax, p[3 * b + 1]! - ay, p[3 * c]! - ax, p[3 * c + 1]! - ay];
    const area = ux * vy - uy * vx;
    if (area === 0) continue;
    const [lowX, highX] = [Math.min(0, ux, vx) + ax, Math.max(0, ux, vx) + ax];
    const [lowY, highY] = [Math.min(0, uy, vy) + ay, Math.max(0, uy, vy) + ay];
    const room = (highX - lowX + highY - lowY) / 4;
    for (let i = Math.floor((lowX - room) / width); i <= Math.floor((highX + room) / width); i++) {
      for (let j = Math.floor((lowY - room) / width); j <= Math.floor((highY + room) / width); j++) {
        for (const k of boxes.get(`${i} ${j}`) ?? []) {
          const [dx, dy] = [q[3 * k]! - ax, q[3 * k + 1]! - ay];
          const u = (dx * vy - dy * vx) / area;
          const v = (ux * dy - uy * dx) / area;
          const inside = Math.min(u, v, 1 - u - v);
          if (inside <= best[k]!) continue;
          best[k] = inside;
          values[k] = field[a]! + u * (field[b]! - field[a]!) + v * (field[c]! - field[a]!);
        }
      }
    }
  }
  return values;
}

/** a − b at the points of a. */
export function differenceOf(a: Coat, b: Coat): Difference {
  const part = differingPart(a.plant.shape, b.plant.shape);
  if (part !== null)
    return {
      ok: false,
      reason: `“${a.plant.name}” and “${b.plant.name}” are different mirrors: their ${part} differs.`,
    };
  const other = hasSamePoints(a.face, b.face) ? b.thickness : interpolated(b.face, b.thickness, a.face);
  return {
    ok: true,
    values: a.thickness.map((value, i) => (value - other[i]!) * 1e9),
    thicker: a.thickness.map((value, i) => Math.max(value, other[i]!)),
  };
}
