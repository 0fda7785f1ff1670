/** Turns about the mirror's axis that leave things as they are. */
import type { FaceGrid } from './faceGrid.ts';
import { ANNULUS, BOX, FRUSTUM, STRIDE, type Solids } from './solids.ts';

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

/** Places that tell where a solid is and how it stands, and what they do not tell. */
interface Landmarks {
  /** kind, and sizes that have no place */
  readonly sizes: readonly number[];
  /** x, y, z, m, and a number that tells one place from another, in any order */
  readonly places: readonly (readonly [number, number, number, number])[];
}

/** The landmarks of solid i: two solids with the same ones fill the same space. */
function landmarksOf({ records }: Solids, i: number): Landmarks {
  const g = records.subarray(STRIDE * i, STRIDE * (i + 1));
  const kind = g[0]!;
  const at = (x: number, y: number, z: number, tag = 0): [number, number, number, number] => [
    g[10]! + g[1]! * x + g[4]! * y + g[7]! * z,
    g[11]! + g[2]! * x + g[5]! * y + g[8]! * z,
    g[12]! + g[3]! * x + g[6]! * y + g[9]! * z,
    tag,
  ];
  const [p, q, r, s] = [g[13]!, g[14]!, g[15]!, g[16]!];
  switch (kind) {
    case BOX: {
      const corners = [-1, 1].flatMap((x) => [-1, 1].flatMap((y) => [-1, 1].map((z) => at(x * p, y * q, z * r))));
      return { sizes: [kind], places: corners };
    }
    case FRUSTUM:
      return { sizes: [kind, s], places: [at(0, 0, 0, q), at(0, 0, p, r)] };
    case ANNULUS:
      return { sizes: [kind, p, q], places: [at(0, 0, -1), at(0, 0, 1)] };
    default:
      return { sizes: [kind, p], places: [at(0, 0, 0)] };
  }
}
