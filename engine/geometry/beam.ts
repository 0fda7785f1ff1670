/**
 * Beams: all lines of sight from a ball of sources to a ball of points, and whether an obstacle stands in them.
 *
 * At share t of the way every line of a beam passes within r + t·dr of l + t·u, with l the middle of the sources, u the
 * way to the middle of the points, r the sources' radius and r + dr the points'. So an obstacle that this growing or
 * shrinking ball never touches hides nothing, and one that swallows it whole, somewhere on the way, hides everything.
 * Both tests err on the side of MIXED.
 */

/** A beam as numbers: x, y, z, radius of the sources, then of the points, m. */
export type Beam = Float64Array;

/** No line of the beam is hidden. */
export const CLEAR = 0;
/** Undecided: some lines may be hidden. */
export const MIXED = 1;
/** Every line of the beam is hidden. */
export const HIDDEN = 2;
export type Standing = typeof CLEAR | typeof MIXED | typeof HIDDEN;

/**
 * Room around every obstacle within which a beam stays undecided, m. A million times the rounding of a line of sight, so
 * that what is decided for the beam is what each line would find; and longer than END_GAP of any line below 1 km.
 */
export const CLEARANCE = 1e-6;

/** Shares of the way that clipping has left; module state, so that nothing is allocated. */
let enter = 0;
let leave = 1;

function unclip(): void {
  enter = 0;
  leave = 1;
}

/** Keeps the part of the way where slope · t ≤ limit. */
function clip(slope: number, limit: number): void {
  if (slope > 0) leave = Math.min(leave, limit / slope);
  else if (slope < 0) enter = Math.max(enter, limit / slope);
  else if (limit < 0) leave = -1;
}

/** Keeps the part of the way where |l + t u| ≤ half + r + t dr, along one axis. */
function clipToSlab(half: number, l: number, u: number, r: number, dr: number): void {
  clip(u - dr, half + r - l);
  clip(-u - dr, half + r + l);
}

/** |l + t u|² − (R + t dR)², from l², l·u and u²: below zero inside a circle or sphere whose radius changes on the way. */
function gapAt(t: number, l2: number, lu: number, u2: number, radius: number, dRadius: number): number {
  return (u2 - dRadius * dRadius) * t * t + 2 * (lu - radius * dRadius) * t + l2 - radius * radius;
}

/** Where |l + t u|² − (R + t dR)² is least between two shares of the way. */
function nearest(
  from: number,
  to: number,
  l2: number,
  lu: number,
  u2: number,
  radius: number,
  dRadius: number,
): number {
  const bend = u2 - dRadius * dRadius;
  if (bend > 0) return Math.min(to, Math.max(from, (radius * dRadius - lu) / bend));
  return gapAt(from, l2, lu, u2, radius, dRadius) < gapAt(to, l2, lu, u2, radius, dRadius) ? from : to;
}

/** Whether l + t u stays outside the changing radius all the way. */
function isOutside(
  from: number,
  to: number,
  l2: number,
  lu: number,
  u2: number,
  radius: number,
  dRadius: number,
): boolean {
  return gapAt(nearest(from, to, l2, lu, u2, radius, dRadius), l2, lu, u2, radius, dRadius) > 0;
}

function isInsideAt(t: number, l2: number, lu: number, u2: number, radius: number, dRadius: number): boolean {
  return radius + t * dRadius > 0 && gapAt(t, l2, lu, u2, radius, dRadius) < 0;
}

/** Whether l + t u stays inside the changing radius: it does if it does at both ends, for inside is convex. */
function isInside(
  from: number,
  to: number,
  l2: number,
  lu: number,
  u2: number,
  radius: number,
  dRadius: number,
): boolean {
  return isInsideAt(from, l2, lu, u2, radius, dRadius) && isInsideAt(to, l2, lu, u2, radius, dRadius);
}

/** Whether a beam keeps clear of a ball. */
export function isClearOfBall(beam: Beam, x: number, y: number, z: number, radius: number): boolean {
  const lx = beam[0]! - x;
  const ly = beam[1]! - y;
  const lz = beam[2]! - z;
  const ux = beam[4]! - beam[0]!;
  const uy = beam[5]! - beam[1]!;
  const uz = beam[6]! - beam[2]!;
  const l2 = lx * lx + ly * ly + lz * lz;
  const lu = lx * ux + ly * uy + lz * uz;
  const u2 = ux * ux + uy * uy + uz * uz;
  return isOutside(0, 1, l2, lu, u2, radius + beam[3]! + CLEARANCE, beam[7]! - beam[3]!);
}

/** How a ball about the origin stands in a beam. */
export function standingOfBall(
  radius: number,
  lx: number,
  ly: number,
  lz: number,
  ux: number,
  uy: number,
  uz: number,
  r: number,
  dr: number,
): Standing {
  const l2 = lx * lx + ly * ly + lz * lz;
  const lu = lx * ux + ly * uy + lz * uz;
  const u2 = ux * ux + uy * uy + uz * uz;
  if (isOutside(0, 1, l2, lu, u2, radius + r, dr)) return CLEAR;
  // a source in or at the ball: what its lines meet first is left to them
  if (gapAt(0, l2, lu, u2, radius + r, dr) <= 0) return MIXED;
  const t = nearest(0, 1, l2, lu, u2, radius - r, -dr);
  return isInsideAt(t, l2, lu, u2, radius - r, -dr) ? HIDDEN : MIXED;
}

/** How a box about the origin stands in a beam. */
export function standingOfBox(
  hx: number,
  hy: number,
  hz: number,
  lx: number,
  ly: number,
  lz: number,
  ux: number,
  uy: number,
  uz: number,
  r: number,
  dr: number,
): Standing {
  unclip();
  clipToSlab(hx, lx, ux, r, dr);
  clipToSlab(hy, ly, uy, r, dr);
  clipToSlab(hz, lz, uz, r, dr);
  if (enter > leave) return CLEAR;
  if (enter === 0) return MIXED; // a source in or at the box
  unclip();
  clipToSlab(hx, lx, ux, -r, -dr);
  clipToSlab(hy, ly, uy, -r, -dr);
  clipToSlab(hz, lz, uz, -r, -dr);
  return enter <= leave ? HIDDEN : MIXED;
}

/** How a flat ring in the plane z = 0, or a disc (inner = 0), stands in a beam. */
export function standingOfAnnulus(
  inner: number,
  outer: number,
  lx: number,
  ly: number,
  lz: number,
  ux: number,
  uy: number,
  uz: number,
  r: number,
  dr: number,
): Standing {
  unclip();
  clipToSlab(0, lz, uz, r, dr);
  if (enter > leave) return CLEAR;
  const l2 = lx * lx + ly * ly;
  const lu = lx * ux + ly * uy;
  const u2 = ux * ux + uy * uy;
  if (isOutside(enter, leave, l2, lu, u2, outer + r, dr)) return CLEAR;
  if (isInside(enter, leave, l2, lu, u2, inner - r, -dr)) return CLEAR;
  if (!(enter > 0 && leave < 1)) return MIXED; // not every line crosses the plane
  if (!isInside(enter, leave, l2, lu, u2, outer - r, -dr)) return MIXED;
  return inner === 0 || isOutside(enter, leave, l2, lu, u2, inner + r, dr) ? HIDDEN : MIXED;
}

/** How the side of a cone frustum between z = 0 and z = height stands in a beam, with both ends if closed. */
export function standingOfFrustum(
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
  r: number,
  dr: number,
): Standing {
  const middle = height / 2;
  unclip();
  clipToSlab(middle, lz - middle, uz, r, dr);
  if (enter > leave) return CLEAR;
  const l2 = lx * lx + ly * ly;
  const lu = lx * ux + ly * uy;
  const u2 = ux * ux + uy * uy;
  const k = (r1 - r0) / height;
  // a ball r from the side lies r·√(1 + k²) from it across the axis
  const across = Math.sqrt(1 + k * k);
  const radius = r0 + k * lz;
  const dRadius = k * uz;
  if (isOutside(enter, leave, l2, lu, u2, radius + across * r, dRadius + across * dr)) return CLEAR;
  if (!closed) {
    return isInside(enter, leave, l2, lu, u2, radius - across * r, dRadius - across * dr) ? CLEAR : MIXED;
  }
  // a source in or at the solid
  if (enter === 0 && !isOutside(0, 0, l2, lu, u2, radius + across * r, dRadius + across * dr)) return MIXED;
  unclip();
  clipToSlab(middle, lz - middle, uz, -r, -dr);
  if (enter > leave) return MIXED;
  const t = nearest(enter, leave, l2, lu, u2, radius - across * r, dRadius - across * dr);
  return isInsideAt(t, l2, lu, u2, radius - across * r, dRadius - across * dr) ? HIDDEN : MIXED;
}
