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

/** A tree of boxes over triangles, parents before children, first child next to its parent. */
interface Tree {
  readonly count: number;
  /** [6·count] least x, y, z, then greatest, m */
  readonly boxes: Float32Array;
  /** [count] the node that follows all below this one */
  readonly next: Int32Array;
  /** [count] where a leaf's triangles begin in `corners`; −1 where there are children */
  readonly first: Int32Array;
  /** [count] where they end */
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
    first: new Int32Array(count).fill(-1),
    last: new Int32Array(count),
    corners: sortedCorners(geometry),
  };
  const open: number[] = []; // by depth, the last node seen whose successor is not known yet
  let node = 0;
  hierarchy.traverse((depth, isLeaf, box, offset, length) => {
    for (const done of open.splice(depth)) tree.next[done] = node;
    open.push(node);
    tree.boxes.set(box.subarray(0, 6), 6 * node);
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
  let nearest = Infinity;
  for (let node = 0; node < count;) {
    if (!meetsBox(boxes, 6 * node, ox, oy, oz, perX, perY, perZ, tMin, Math.min(tMax, nearest))) {
      node = next[node]!;
      continue;
    }
    // children have first = −1 and last = 0: no triangles of their own
    for (let k = Math.max(0, first[node]!); k < last[node]!; k++) {
      const t = hitTriangle(corners, 9 * k, ox, oy, oz, dx, dy, dz);
      if (!(t > tMin && t < tMax && t < nearest)) continue;
      if (isAnyEnough) return t;
      nearest = t;
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
 * The ray passes the edges on the same side when the volumes that it spans with them have one sign. Neighbours reckon
 * the edge between them from the same products, so that no ray slips through.
 */
function hitTriangle(
  c: Float32Array,
  o: number,
  ox: number,
  oy: number,
  oz: number,
  dx: number,
  dy: number,
  dz: number,
): number {
  const ax = c[o]! - ox;
  const ay = c[o + 1]! - oy;
  const az = c[o + 2]! - oz;
  const bx = c[o + 3]! - ox;
  const by = c[o + 4]! - oy;
  const bz = c[o + 5]! - oz;
  const cx = c[o + 6]! - ox;
  const cy = c[o + 7]! - oy;
  const cz = c[o + 8]! - oz;
  const ab = dx * (ay * bz - az * by) + dy * (az * bx - ax * bz) + dz * (ax * by - ay * bx);
  const bc = dx * (by * cz - bz * cy) + dy * (bz * cx - bx * cz) + dz * (bx * cy - by * cx);
  if (ab * bc < 0) return Infinity;
  const ca = dx * (cy * az - cz * ay) + dy * (cz * ax - cx * az) + dz * (cx * ay - cy * ax);
  if (ab * ca < 0 || bc * ca < 0) return Infinity;
  const [px, py, pz] = [bx - ax, by - ay, bz - az];
  const [qx, qy, qz] = [cx - ax, cy - ay, cz - az];
  const nx = py * qz - pz * qy;
  const ny = pz * qx - px * qz;
  const nz = px * qy - py * qx;
  return (nx * ax + ny * ay + nz * az) / (nx * dx + ny * dy + nz * dz);
}

function isClearOfTree({ count, boxes, next, first }: Tree, beam: Beam): boolean {
  for (let node = 0; node < count;) {
    if (isClearOfBox(boxes, 6 * node, beam)) node = next[node]!;
    else if (first[node]! >= 0) return false;
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
