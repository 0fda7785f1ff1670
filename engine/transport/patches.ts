/** Patches: the points of each run sorted into a tree of neighbourhoods with bounding balls. */
import type { OrientedPoints } from '../geometry/orientedPoints.ts';
import { RUN } from './depositKernel.ts';

/** Points of a patch that is not divided further. */
export const LEAF = 16;
/** Slots for the nodes of one run; slot 0 is free. */
export const NODES = (2 * RUN) / LEAF;

/**
 * The tree of a run is a heap: node 1 holds all of it, nodes 2k and 2k + 1 the halves of node k. A node of at most LEAF
 * points has no halves. Run r owns slots NODES·r … NODES·(r + 1) of the arrays by node.
 */
export interface Patches {
  /** [count] indices of points, run after run; those of a node are adjacent */
  readonly members: Int32Array;
  /** [runs·NODES] slot of `members` where a node begins */
  readonly from: Int32Array;
  /** [runs·NODES] slot where it ends */
  readonly to: Int32Array;
  /** [4·runs·NODES] bounding balls: x, y, z, radius, m */
  readonly balls: Float64Array;
  /** [4] bounding ball of all points */
  readonly whole: Float64Array;
}

/** Patches of sets of points, found once for each. */
const known = new WeakMap<OrientedPoints, Patches>();

/** The patches of a set of points. A set larger than one patch is remembered, and must not change afterwards. */
export function patchesOf(points: OrientedPoints): Patches {
  const found = known.get(points);
  if (found) return found;
  const patches = dividePoints(points);
  if (points.count > LEAF) known.set(points, patches);
  return patches;
}

function numbersBelow(count: number): Int32Array {
  const numbers = new Int32Array(count);
  for (let i = 0; i < count; i++) numbers[i] = i;
  return numbers;
}

function dividePoints({ count, position }: OrientedPoints): Patches {
  // a single patch has node 1 only
  const slots = count > LEAF ? NODES * Math.ceil(count / RUN) : 2;
  const patches: Patches = {
    members: numbersBelow(count),
    from: new Int32Array(slots),
    to: new Int32Array(slots),
    balls: new Float64Array(4 * slots),
    whole: boundingBall(position),
  };
  for (let begin = 0; begin < count; begin += RUN) {
    divideNode(patches, position, NODES * (begin / RUN), 1, begin, Math.min(count, begin + RUN));
  }
  return patches;
}

/** Fills in node `node` of the run whose slots start at `base`, and all below it. */
function divideNode(
  patches: Patches,
  position: Float64Array,
  base: number,
  node: number,
  from: number,
  to: number,
): void {
  const { members, balls } = patches;
  const slot = base + node;
  patches.from[slot] = from;
  patches.to[slot] = to;
  const axis = boundingBallInto(balls.subarray(4 * slot, 4 * slot + 4), position, members, from, to);
  if (to - from <= LEAF) return;
  // the first half is a whole number of leaves, so that the leaves are full
  const half = from + LEAF * Math.ceil((to - from) / (2 * LEAF));
  selectInto(members, position, axis, from, to, half);
  divideNode(patches, position, base, 2 * node, from, half);
  divideNode(patches, position, base, 2 * node + 1, half, to);
}

/** Bounding ball of places: x, y, z, radius, m. */
export function boundingBall(position: Float64Array): Float64Array {
  const count = position.length / 3;
  const ball = new Float64Array(4);
  boundingBallInto(ball, position, numbersBelow(count), 0, count);
  return ball;
}

/** Writes the ball about the middle of the members' box, and returns the axis along which the box is longest. */
function boundingBallInto(
  out: Float64Array,
  position: Float64Array,
  members: Int32Array,
  from: number,
  to: number,
): 0 | 1 | 2 {
  let [lowX, lowY, lowZ] = [Infinity, Infinity, Infinity];
  let [highX, highY, highZ] = [-Infinity, -Infinity, -Infinity];
  for (let k = from; k < to; k++) {
    const o = 3 * members[k]!;
    lowX = Math.min(lowX, position[o]!);
    lowY = Math.min(lowY, position[o + 1]!);
    lowZ = Math.min(lowZ, position[o + 2]!);
    highX = Math.max(highX, position[o]!);
    highY = Math.max(highY, position[o + 1]!);
    highZ = Math.max(highZ, position[o + 2]!);
  }
  out[0] = (lowX + highX) / 2;
  out[1] = (lowY + highY) / 2;
  out[2] = (lowZ + highZ) / 2;
  out[3] = farthest(out, position, members, from, to);
  const [wx, wy, wz] = [highX - lowX, highY - lowY, highZ - lowZ];
  return wx >= wy && wx >= wz ? 0 : wy >= wz ? 1 : 2;
}

/** Distance of the member farthest from a place. */
function farthest(place: Float64Array, position: Float64Array, members: Int32Array, from: number, to: number): number {
  const [x, y, z] = [place[0]!, place[1]!, place[2]!];
  let most = 0;
  for (let k = from; k < to; k++) {
    const o = 3 * members[k]!;
    const dx = position[o]! - x;
    const dy = position[o + 1]! - y;
    const dz = position[o + 2]! - z;
    most = Math.max(most, dx * dx + dy * dy + dz * dz);
  }
  return Math.sqrt(most);
}

/**
 * Reorders members[from … to) so that none before `nth` lies farther along the axis than any from `nth` on.
 *
 * @see C. A. R. Hoare, Algorithm 65: Find, Comm. ACM 4 (1961) 321
 */
function selectInto(
  members: Int32Array,
  position: Float64Array,
  axis: number,
  from: number,
  to: number,
  nth: number,
): void {
  let left = from;
  let right = to - 1;
  while (left < right) {
    const pivot = position[3 * members[(left + right) >> 1]! + axis]!;
    let i = left;
    let j = right;
    while (i <= j) {
      while (position[3 * members[i]! + axis]! < pivot) i++;
      while (position[3 * members[j]! + axis]! > pivot) j--;
      if (i > j) break;
      const swapped = members[i]!;
      members[i++] = members[j]!;
      members[j--] = swapped;
    }
    if (nth <= j) right = j;
    else if (nth >= i) left = i;
    else return;
  }
}
