/** Filaments that are rotations or mirror images of one another about the mirror's axis. */
import type { EmissionLaw } from '../emission/emissionLaw.ts';
import type { FilamentSource } from '../emission/filamentSource.ts';
import type { MirrorShape } from '../geometry/mirrorShape.ts';

/** How far apart, relative to the mirror's size, places and axes may be and still count as the same: a few thousand roundings. */
const SAME = 1e-12;
/** Share of the mirror's radius below which a filament's middle is on the axis and has no azimuth of its own. */
const ON_AXIS = 1e-6;

/** A filament turned about the axis so that its middle lies at azimuth 0. */
export interface Turned {
  /** x counted from the axis; without a shield, which the caller answers for */
  readonly source: FilamentSource;
  /** by how much it was turned back, rad; 0 where the face lets no turn through */
  readonly angle: number;
}

/** Whether a turn about the face's own axis leaves the surface as it is. */
export function isTurnable(shape: MirrorShape): boolean {
  return shape.centerX === 0;
}

/** Clock angle of a filament about the axis. */
function azimuthOf({ count, position: p, axis: a }: FilamentSource, scale: number): number {
  let [x, y] = [0, 0];
  for (let j = 0; j < count; j++) {
    x += p[3 * j]! / count;
    y += p[3 * j + 1]! / count;
  }
  if (Math.hypot(x, y) > ON_AXIS * scale) return Math.atan2(y, x);
  if (Math.hypot(p[0]!, p[1]!) > ON_AXIS * scale) return Math.atan2(p[1]!, p[0]!);
  return Math.hypot(a[0]!, a[1]!) > ON_AXIS ? Math.atan2(a[1]!, a[0]!) : 0;
}

/** Writes (x, y, z) turned by the angle whose cosine and sine are given. */
function turnInto(out: Float64Array, vectors: Float64Array, cos: number, sin: number): Float64Array {
  for (let o = 0; o < vectors.length; o += 3) {
    const [x, y] = [vectors[o]!, vectors[o + 1]!];
    out[o] = cos * x - sin * y;
    out[o + 1] = sin * x + cos * y;
    out[o + 2] = vectors[o + 2]!;
  }
  return out;
}

/** Turns a filament to azimuth 0, or leaves it where it is if the face has no such symmetry. */
export function turnedToZero(source: FilamentSource, shape: MirrorShape): Turned {
  if (!isTurnable(shape)) return { source, angle: 0 };
  const angle = azimuthOf(source, shape.rimRadius);
  const [cos, sin] = [Math.cos(angle), -Math.sin(angle)];
  const position = turnInto(new Float64Array(source.position.length), source.position, cos, sin);
  const axis = turnInto(new Float64Array(source.axis.length), source.axis, cos, sin);
  return { source: { ...source, position, axis }, angle };
}

/** Laws that an axis and its opposite share. */
function isTwoSided(law: EmissionLaw): boolean {
  return law.kind === 'wire' || law.kind === 'coil' || law.kind === 'isotropic';
}

function isSameLaw(a: EmissionLaw, b: EmissionLaw): boolean {
  if (a === b) return true;
  if (a.kind === 'cosine' && b.kind === 'cosine') return a.power === b.power;
  if (a.kind === 'table' && b.kind === 'table') {
    return isSameArray(a.table.angles, b.table.angles) && isSameArray(a.table.intensities, b.table.intensities);
  }
  return a.kind === b.kind;
}

function isSameArray(a: ArrayLike<number>, b: ArrayLike<number>): boolean {
  if (a.length !== b.length) return false;
  for (let i = 0; i < a.length; i++) if (a[i] !== b[i]) return false;
  return true;
}

/** Whether sub-source j of a is sub-source k of b, y counted with the given sign. */
function isSameSub(a: FilamentSource, j: number, b: FilamentSource, k: number, ySign: number, near: number): boolean {
  const [p, q, u, v] = [a.position, b.position, a.axis, b.axis];
  const [o, s] = [3 * j, 3 * k];
  if (Math.abs(p[o]! - q[s]!) > near) return false;
  if (Math.abs(p[o + 1]! - ySign * q[s + 1]!) > near) return false;
  if (Math.abs(p[o + 2]! - q[s + 2]!) > near) return false;
  if (Math.abs(a.weight[j]! - b.weight[k]!) > SAME) return false;
  if (a.law.kind === 'isotropic') return true;
  const dot = u[o]! * v[s]! + ySign * u[o + 1]! * v[s + 1]! + u[o + 2]! * v[s + 2]!;
  const sign = isTwoSided(a.law) && dot < 0 ? -1 : 1;
  return (
    Math.abs(u[o]! - sign * v[s]!) <= SAME &&
    Math.abs(u[o + 1]! - sign * ySign * v[s + 1]!) <= SAME &&
    Math.abs(u[o + 2]! - sign * v[s + 2]!) <= SAME
  );
}

function isSameInOrder(
  a: FilamentSource,
  b: FilamentSource,
  ySign: number,
  isReversed: boolean,
  near: number,
): boolean {
  for (let j = 0; j < a.count; j++) {
    if (!isSameSub(a, j, b, isReversed ? a.count - 1 - j : j, ySign, near)) return false;
  }
  return true;
}

/**
 * Whether one filament equals another, or its mirror image in the plane y = 0.
 *
 * Sub-sources are compared in order and in reverse order: a mirror turns a coil's loops round.
 *
 * @param ySign 1 for itself, −1 for the mirror image
 * @param scale [m] size of the mirror
 */
export function isSameSource(a: FilamentSource, b: FilamentSource, ySign: 1 | -1, scale: number): boolean {
  if (a.count !== b.count || !isSameLaw(a.law, b.law)) return false;
  const near = SAME * scale;
  return isSameInOrder(a, b, ySign, false, near) || isSameInOrder(a, b, ySign, true, near);
}
