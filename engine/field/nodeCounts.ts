/** How many nodes a column will need, foreseen from where its singularities lie. */
import type { FilamentSource } from '../emission/filamentSource.ts';
import { sag, type MirrorShape } from '../geometry/mirrorShape.ts';
import type { NodeCounts } from './faceNodes.ts';
import type { ClassError } from './seriesError.ts';

/** Least and largest numbers of nodes; beyond these a direct sum at the display points is the better way. */
export const LEAST: NodeCounts = { radialCount: 6, azimuthCount: 16 };
export const LARGEST: NodeCounts = { radialCount: 72, azimuthCount: 384 };

/** A column's first neglected term over its mean is about this times its decay: measured on random plants. */
export const FIRST_TERM = 20;
/** The logarithm in the open coil's law asks for about so many times the azimuths that the distance does. */
const COIL_MORE = 2;
const SAMPLES = 5;

/** Decay of a column's terms: e^−perHarmonic from each harmonic to the next, e^−perTerm in radius. */
export interface Decay {
  readonly perHarmonic: number;
  readonly perTerm: number;
}

/** Natural logarithm of the sum of half axes of the Bernstein ellipse through x + iy, foci ±1. */
function ellipseLog(x: number, y: number): number {
  const sum = Math.hypot(x - 1, y) + Math.hypot(x + 1, y);
  return Math.acosh(Math.max(1, sum / 2));
}

/**
 * Decay of the terms of 1/d² over the face, d the distance from the nearest sub-source.
 *
 *     azimuth: cosh µ = (r² + s² + h²)/(2rs), harmonics fall as e^{−µm}
 *     radius:  d = 0 at r = s cosα ± i √(s² sin²α + h²): Bernstein's ellipse through it
 *
 * with s the sub-source's distance from the axis and h its height over the surface.
 *
 * @see L. N. Trefethen, Approximation Theory and Approximation Practice (2013), theorem 8.2
 */
export function foreseenDecay({ count, position: p }: FilamentSource, shape: MirrorShape): Decay {
  const { holeRadius: inner, rimRadius: outer, centerX } = shape;
  let [perHarmonic, perTerm] = [Infinity, Infinity];
  for (let j = 0; j < count; j++) {
    const [x, y, z] = [p[3 * j]! - centerX, p[3 * j + 1]!, p[3 * j + 2]!];
    const s = Math.hypot(x, y);
    const [ux, uy] = s > 0 ? [x / s, y / s] : [1, 0];
    for (let i = 0; i < SAMPLES; i++) {
      const r =
        inner + ((outer - inner) * (i + 0.5)) / SAMPLES + (i === SAMPLES - 1 ? (outer - inner) / (2 * SAMPLES) : 0);
      const h = z - sag(shape, Math.hypot(centerX + r * ux, r * uy));
      if (s > 0) perHarmonic = Math.min(perHarmonic, Math.acosh(Math.max(1, (r * r + s * s + h * h) / (2 * r * s))));
      const alpha = (Math.PI * i) / (SAMPLES - 1);
      const place = (2 * s * Math.cos(alpha) - inner - outer) / (outer - inner);
      perTerm = Math.min(perTerm, ellipseLog(place, (2 * Math.hypot(s * Math.sin(alpha), h)) / (outer - inner)));
    }
  }
  return { perHarmonic, perTerm };
}

/** A multiple of 4, within the limits. */
function azimuths(wanted: number): number {
  return Math.min(LARGEST.azimuthCount, Math.max(LEAST.azimuthCount, 4 * Math.ceil(wanted / 4)));
}

function radii(wanted: number): number {
  return Math.min(LARGEST.radialCount, Math.max(LEAST.radialCount, Math.ceil(wanted)));
}

/** Nodes for a relative error of the column. */
export function foreseenCounts(source: FilamentSource, shape: MirrorShape, relativeError: number): NodeCounts {
  const { perHarmonic, perTerm } = foreseenDecay(source, shape);
  const needed = Math.log(FIRST_TERM / relativeError);
  const more = source.law.kind === 'coil' ? COIL_MORE : 1;
  return { radialCount: radii(needed / perTerm), azimuthCount: azimuths((more * 2 * needed) / perHarmonic) };
}

/** Least and largest enlargement at a time. */
const GROWTH = [1.25, 2] as const;

/** Factor by which more nodes bring an error down to what is allowed, if it falls with this power of their number. */
function growth(error: number, allowed: number, power: number): number {
  if (error <= allowed) return 1;
  if (error === Infinity) return GROWTH[1];
  return Math.min(GROWTH[1], Math.max(GROWTH[0], (error / allowed) ** (1 / Math.max(1, power))));
}

/** More nodes where the error is larger than allowed. */
export function enlargedCounts(
  { radialCount, azimuthCount }: NodeCounts,
  error: ClassError,
  allowed: { readonly azimuth: number; readonly radius: number },
): NodeCounts {
  return {
    radialCount: radii(radialCount * growth(error.radius, allowed.radius, error.radiusPower)),
    azimuthCount: azimuths(azimuthCount * growth(error.azimuth, allowed.azimuth, error.azimuthPower)),
  };
}

/** Time of one multiplication in the transforms over that of one sub-source at one point. */
const PER_MULTIPLICATION = 0.15;

/** Work of a column in units of one sub-source at one point: deposits, and the transforms in azimuth and radius. */
export function columnWork(radialCount: number, azimuthCount: number, subCount: number): number {
  const nodes = radialCount * azimuthCount;
  return nodes * (subCount + PER_MULTIPLICATION * (azimuthCount / 4 + radialCount));
}

/** Work of the column with which, falling on as they do, both errors would be as small as allowed; the present work while they do not fall. */
export function workWanted(
  { radialCount, azimuthCount }: NodeCounts,
  subCount: number,
  error: ClassError,
  allowed: { readonly azimuth: number; readonly radius: number },
): number {
  const factor = (found: number, most: number, power: number): number =>
    found <= most || found === Infinity ? 1 : (found / most) ** (1 / Math.max(1, power));
  return columnWork(
    radialCount * factor(error.radius, allowed.radius, error.radiusPower),
    azimuthCount * factor(error.azimuth, allowed.azimuth, error.azimuthPower),
    subCount,
  );
}
