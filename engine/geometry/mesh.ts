/**
 * Rays against imported meshes. Stands on three's ray hierarchy, so it is loaded only where there are meshes.
 *
 * The library divides the triangles; rays walk a flat copy of its tree, node after node, without anything allocated:
 * where a node's box is missed they go on at the node that follows all below it.
 */
import { BufferAttribute, BufferGeometry } from 'three';
import { MeshBVH } from 'three-mesh-bvh';
import { CLEAR, CLEARANCE, standingOfBox, type Beam } from './beam.ts';
import type { MeshSolid } from './scene.ts';
import type { Triangles } from './stl.ts';

/** Room around every box, m: more than the rounding of corners in single precision, up to 8 m from the origin. */
const ROOM = 1e-6;

/** A tree of boxes over triangles, parents before children, first child next to its parent. */
interface Tree {
  readonly count: number;
  /** [6·count] least x, y, z, then greatest, m */
  readonly boxes: Float32Array;
  /** [count] the node that follows all below this one */
  readonly next: Int32Array;
  /** [count] where a leaf's triangles begin in `corners` */
  readonly first: Int32Array;
  /** [count] where they end; no later than they begin where there are children instead */
  readonly last: Int32Array;
  /** [9·triangles] corners of triangles, leaf after leaf, m */
  readonly corners: Float32Array;
}

/** Builds the hierarchy over a mesh; takes about a microsecond a triangle. */
export function buildMeshSolid({ position }: Triangles): MeshSolid {
  const geometry = new BufferGeometry();
  geometry.setAttribute('position', new BufferAttribute(position, 3));
  geometry.computeBoundingSphere();
  const tree = flatten(new MeshBVH(geometry, { targetLeafSize: 4 }), geometry);
  const { center, radius } = geometry.boundingSphere!;
  return {
    bound: [center.x, center.y, center.z, radius],
    firstHit: (ox, oy, oz, dx, dy, dz, tMin, tMax) => hitTree(tree, ox, oy, oz, dx, dy, dz, tMin, tMax, false),
    isHit: (ox, oy, oz, dx, dy, dz, tMin, tMax) => hitTree(tree, ox, oy, oz, dx, dy, dz, tMin, tMax, true) < tMax,
    isClearOf: (beam) => isClearOfTree(tree, beam),
  };
}

function flatten(hierarchy: MeshBVH, geometry: BufferGeometry): Tree {
  let count = 0;
  hierarchy.traverse(() => void count++);
  const tree = {
    count,
    boxes: new Float32Array(6 * count),
    next: new Int32Array(count).fill(count),
    first: new Int32Array(count),
    last: new Int32Array(count),
    corners: sortedCorners(geometry),
  };
  const open: number[] = []; // by depth, the last node seen whose successor is not known yet
  let node = 0;
  hierarchy.traverse((depth, isLeaf, box, offset, length) => {
    for (const done of open.splice(depth)) tree.next[done] = node;
    open.push(node);
    for (let k = 0; k < 6; k++) tree.boxes[6 * node + k] = box[k]! + (k < 3 ? -ROOM : ROOM);
    if (isLeaf) {
      tree.first[node] = offset;
      tree.last[node] = offset + length;
    }
    node++;
  });
  return tree;
}

/** Corners in the order in which the hierarchy has put the triangles. */
function sortedCorners(geometry: BufferGeometry): Float32Array {
  const position = geometry.getAttribute('position').array;
  const order = geometry.getIndex()!.array;
  const corners = new Float32Array(3 * order.length);
  for (let k = 0; k < order.length; k++) {
    for (let axis = 0; axis < 3; axis++) corners[3 * k + axis] = position[3 * order[k]! + axis]!;
  }
  return corners;
}

/** First hit between tMin and tMax, or any of them, as a multiple of the direction; else Infinity. */
function hitTree(
  { count, boxes, next, first, last, corners }: Tree,
  ox: number,
  oy: number,
  oz: number,
  dx: number,
  dy: number,
  dz: number,
  tMin: number,
  tMax: number,
  isAnyEnough: boolean,
): number {
  const [perX, perY, perZ] = [1 / dx, 1 / dy, 1 / dz];
  const [ax, ay, az] = [Math.abs(dx), Math.abs(dy), Math.abs(dz)];
  const main = ax >= ay && ax >= az ? 0 : ay >= az ? 1 : 2;
  let end = tMax;
  let nearest = Infinity;
  for (let node = 0; node < count;) {
    if (!meetsBox(boxes, 6 * node, ox, oy, oz, perX, perY, perZ, tMin, end)) {
      node = next[node]!;
      continue;
    }
    for (let k = first[node]!; k < last[node]!; k++) {
      const t =
        main === 0
          ? hitTriangle(corners, 9 * k, 1, 2, 0, oy, oz, ox, dy * perX, dz * perX, perX)
          : main === 1
            ? hitTriangle(corners, 9 * k, 2, 0, 1, oz, ox, oy, dz * perY, dx * perY, perY)
            : hitTriangle(corners, 9 * k, 0, 1, 2, ox, oy, oz, dx * perZ, dy * perZ, perZ);
      if (!(t > tMin && t < end)) continue;
      if (isAnyEnough) return t;
      end = nearest = t;
    }
    node++;
  }
  return nearest;
}

/** Whether a ray, by the reciprocals of its direction, passes a box between tMin and tMax. */
function meetsBox(
  boxes: Float32Array,
  o: number,
  ox: number,
  oy: number,
  oz: number,
  perX: number,
  perY: number,
  perZ: number,
  tMin: number,
  tMax: number,
): boolean {
  const x0 = (boxes[o]! - ox) * perX;
  const x1 = (boxes[o + 3]! - ox) * perX;
  const y0 = (boxes[o + 1]! - oy) * perY;
  const y1 = (boxes[o + 4]! - oy) * perY;
  const z0 = (boxes[o + 2]! - oz) * perZ;
  const z1 = (boxes[o + 5]! - oz) * perZ;
  // a ray in the plane of a side gives 0 · ∞: NaN, which no comparison lets narrow the span
  let enter = tMin;
  let leave = tMax;
  if (Math.min(x0, x1) > enter) enter = Math.min(x0, x1);
  if (Math.max(x0, x1) < leave) leave = Math.max(x0, x1);
  if (Math.min(y0, y1) > enter) enter = Math.min(y0, y1);
  if (Math.max(y0, y1) < leave) leave = Math.max(y0, y1);
  if (Math.min(z0, z1) > enter) enter = Math.min(z0, z1);
  if (Math.max(z0, z1) < leave) leave = Math.max(z0, z1);
  return enter <= leave;
}

/**
 * Where a ray crosses a triangle, from either side, as a multiple of its direction; NaN or Infinity if nowhere.
 *
 * Seen along the ray the corners have two coordinates, and the ray is at zero. It passes the edges on the same side when
 * no two of the areas that it spans with them differ in sign. Rounding may make such an area zero but never turn its
 * sign, so that no ray slips through between neighbours.
 *
 * @param kw axis along which the ray runs most; ku and kv are the others
 * @param su slope of the ray along ku against kw; sv along kv
 * @param perW reciprocal of the direction along kw
 * @see S. Woop, C. Benthin, I. Wald, Watertight ray/triangle intersection, J. Computer Graphics Techniques 2 (2013) 65
 */
function hitTriangle(
  c: Float32Array,
  o: number,
  ku: number,
  kv: number,
  kw: number,
  ou: number,
  ov: number,
  ow: number,
  su: number,
  sv: number,
  perW: number,
): number {
  const aw = c[o + kw]! - ow;
  const bw = c[o + 3 + kw]! - ow;
  const cw = c[o + 6 + kw]! - ow;
  const au = c[o + ku]! - ou - su * aw;
  const av = c[o + kv]! - ov - sv * aw;
  const bu = c[o + 3 + ku]! - ou - su * bw;
  const bv = c[o + 3 + kv]! - ov - sv * bw;
  const areaC = au * bv - av * bu;
  const cu = c[o + 6 + ku]! - ou - su * cw;
  const cv = c[o + 6 + kv]! - ov - sv * cw;
  const areaA = bu * cv - bv * cu;
  const areaB = cu * av - cv * au;
  if ((areaA < 0 || areaB < 0 || areaC < 0) && (areaA > 0 || areaB > 0 || areaC > 0)) return Infinity;
  return ((areaA * aw + areaB * bw + areaC * cw) / (areaA + areaB + areaC)) * perW;
}

function isClearOfTree({ count, boxes, next, first, last }: Tree, beam: Beam): boolean {
  for (let node = 0; node < count;) {
    if (isClearOfBox(boxes, 6 * node, beam)) node = next[node]!;
    else if (last[node]! > first[node]!) return false;
    else node++;
  }
  return true;
}

function isClearOfBox(boxes: Float32Array, o: number, beam: Beam): boolean {
  const [x0, y0, z0, x1, y1, z1] = [
    boxes[o]!,
    boxes[o + 1]!,
    boxes[o + 2]!,
    boxes[o + 3]!,
    boxes[o + 4]!,
    boxes[o + 5]!,
  ];
  return (
    standingOfBox(
      (x1 - x0) / 2,
      (y1 - y0) / 2,
      (z1 - z0) / 2,
      beam[0]! - (x0 + x1) / 2,
      beam[1]! - (y0 + y1) / 2,
      beam[2]! - (z0 + z1) / 2,
      beam[4]! - beam[0]!,
      beam[5]! - beam[1]!,
      beam[6]! - beam[2]!,
      beam[3]! + CLEARANCE,
      beam[7]! - beam[3]!,
    ) === CLEAR
  );
}
