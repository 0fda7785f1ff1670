/** Turns about the mirror's axis that leave things as they are. */
import type { FaceGrid } from './faceGrid.ts';
import { landmarksOf, type Landmarks, type Solids } from './solids.ts';

/** How far apart places may be and still count as the same, m: far below any drawing, far above rounding. */
const SAME = 1e-9;

/** Into how many equal sectors a face's grid can be cut, so that a turn by one brings nodes to where nodes were. */
export function sectorsOf({ shape, azimuthEdges }: FaceGrid): number {
  if (shape.centerX !== 0) return 1;
  return shape.cornerAngle === null ? azimuthEdges.length - 1 : 6;
}

/**
 * The most turns, of those that divide `sectors`, that bring obstacles to where obstacles like them were.
 *
 * @returns n: a turn by 2π/n changes nothing; 1 if only a whole turn does
 */
export function turnsOf(solids: Solids, sectors: number): number {
  const all = Array.from({ length: solids.count }, (_, i) => landmarksOf(solids, i));
  for (let n = sectors; n > 1; n--) {
    if (sectors % n === 0 && all.every((one) => hasLikeness(all, one, (2 * Math.PI) / n))) return n;
  }
  return 1;
}

function hasLikeness(all: readonly Landmarks[], { sizes, places }: Landmarks, angle: number): boolean {
  const [cos, sin] = [Math.cos(angle), Math.sin(angle)];
  const turned = places.map(([x, y, z, tag]) => [cos * x - sin * y, sin * x + cos * y, z, tag] as const);
  return all.some(
    (other) =>
      isNear(sizes, other.sizes) &&
      turned.length === other.places.length &&
      turned.every((place) => other.places.some((own) => isNear(place, own))),
  );
}

function isNear(a: readonly number[], b: readonly number[]): boolean {
  return a.length === b.length && a.every((value, k) => Math.abs(value - b[k]!) <= SAME);
}
