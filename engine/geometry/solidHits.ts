/**
 * Rays against each kind of solid, in the solid's own frame: origin l, direction u of any length.
 *
 * All answer the first t > tMin at which l + t u is on the solid's surface, or Infinity.
 */

/** Box about the origin, by its half sides. */
export function hitBox(
  hx: number,
  hy: number,
  hz: number,
  lx: number,
  ly: number,
  lz: number,
  ux: number,
  uy: number,
  uz: number,
  tMin: number,
): number {
  let enter = -Infinity;
  let leave = Infinity;
  // an axis along which the ray does not move: outside its slab there is no hit
  if (ux === 0) {
    if (Math.abs(lx) > hx) return Infinity;
  } else {
    const t = (-hx - lx) / ux;
    const s = (hx - lx) / ux;
    enter = Math.max(enter, Math.min(t, s));
    leave = Math.min(leave, Math.max(t, s));
  }
  if (uy === 0) {
    if (Math.abs(ly) > hy) return Infinity;
  } else {
    const t = (-hy - ly) / uy;
    const s = (hy - ly) / uy;
    enter = Math.max(enter, Math.min(t, s));
    leave = Math.min(leave, Math.max(t, s));
  }
  if (uz === 0) {
    if (Math.abs(lz) > hz) return Infinity;
  } else {
    const t = (-hz - lz) / uz;
    const s = (hz - lz) / uz;
    enter = Math.max(enter, Math.min(t, s));
    leave = Math.min(leave, Math.max(t, s));
  }
  if (enter > leave) return Infinity;
  return enter > tMin ? enter : leave > tMin ? leave : Infinity;
}

/** Sphere about the origin. */
export function hitSphere(
  r: number,
  lx: number,
  ly: number,
  lz: number,
  ux: number,
  uy: number,
  uz: number,
  tMin: number,
): number {
  const a = ux * ux + uy * uy + uz * uz;
  const b = lx * ux + ly * uy + lz * uz;
  const root = b * b - a * (lx * lx + ly * ly + lz * lz - r * r);
  if (root < 0) return Infinity;
  const q = Math.sqrt(root);
  const near = (-b - q) / a;
  if (near > tMin) return near;
  const far = (-b + q) / a;
  return far > tMin ? far : Infinity;
}

/** Flat ring about the origin in the plane z = 0; a disc if its inner radius is 0. */
export function hitAnnulus(
  inner: number,
  outer: number,
  lx: number,
  ly: number,
  lz: number,
  ux: number,
  uy: number,
  uz: number,
  tMin: number,
): number {
  const t = -lz / uz;
  if (!(t > tMin)) return Infinity;
  const x = lx + t * ux;
  const y = ly + t * uy;
  const r2 = x * x + y * y;
  return r2 <= outer * outer && r2 >= inner * inner ? t : Infinity;
}

/** Side of a cone frustum between z = 0 and z = height, both of its ends if closed. */
export function hitFrustum(
  height: number,
  r0: number,
  r1: number,
  closed: boolean,
  lx: number,
  ly: number,
  lz: number,
  ux: number,
  uy: number,
  uz: number,
  tMin: number,
): number {
  let first = Infinity;
  const k = (r1 - r0) / height;
  const r = r0 + k * lz;
  const dr = k * uz;
  const a = ux * ux + uy * uy - dr * dr;
  const b = lx * ux + ly * uy - r * dr;
  const c = lx * lx + ly * ly - r * r;
  const root = b * b - a * c;
  if (root >= 0) {
    // stable roots: q has no cancellation, and a = 0 (ray along the cone's side) is harmless
    const q = -(b + (b < 0 ? -Math.sqrt(root) : Math.sqrt(root)));
    first = Math.min(sideHit(q / a, height, r, dr, lz, uz, tMin), sideHit(c / q, height, r, dr, lz, uz, tMin));
  }
  if (!closed) return first;
  first = Math.min(first, hitAnnulus(0, r0, lx, ly, lz, ux, uy, uz, tMin));
  return Math.min(first, hitAnnulus(0, r1, lx, ly, lz - height, ux, uy, uz, tMin));
}

/** Whether hitFrustum would answer less than tMax, by the same numbers, but done at the first hit of any kind. */
export function isFrustumHit(
  height: number,
  r0: number,
  r1: number,
  closed: boolean,
  lx: number,
  ly: number,
  lz: number,
  ux: number,
  uy: number,
  uz: number,
  tMin: number,
  tMax: number,
): boolean {
  const k = (r1 - r0) / height;
  const r = r0 + k * lz;
  const dr = k * uz;
  const a = ux * ux + uy * uy - dr * dr;
  const b = lx * ux + ly * uy - r * dr;
  const c = lx * lx + ly * ly - r * r;
  const root = b * b - a * c;
  // a line that never comes into the cone meets none of its ends either
  if (root < 0 && a > 0) return false;
  if (root >= 0) {
    const q = -(b + (b < 0 ? -Math.sqrt(root) : Math.sqrt(root)));
    if (sideHit(q / a, height, r, dr, lz, uz, tMin) < tMax) return true;
    if (sideHit(c / q, height, r, dr, lz, uz, tMin) < tMax) return true;
  }
  if (!closed) return false;
  if (hitAnnulus(0, r0, lx, ly, lz, ux, uy, uz, tMin) < tMax) return true;
  return hitAnnulus(0, r1, lx, ly, lz - height, ux, uy, uz, tMin) < tMax;
}

/** t if it is ahead and on the frustum's side, else Infinity. */
function sideHit(t: number, height: number, r: number, dr: number, lz: number, uz: number, tMin: number): number {
  if (!(t > tMin)) return Infinity;
  const z = lz + t * uz;
  return z >= 0 && z <= height && r + t * dr >= 0 ? t : Infinity;
}
