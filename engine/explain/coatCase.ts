/** Which question a coat raises, and which two places answer it. */
import type { Coat } from '../coat/coat.ts';
import type { Extreme } from '../coat/extremes.ts';
import type { OrientedPoints } from '../geometry/orientedPoints.ts';
import { spotAt, zoneAt } from './places.ts';
import { degrees, lengthFor } from './words.ts';

/** `all over`: even, but off the target; `side`: a thin place beside filaments that give nothing; `patch`: a place that differs from others at its radius. */
export type CoatCase =
  | 'bare'
  | 'even'
  | 'thin all over'
  | 'thick all over'
  | 'thin edge'
  | 'thin middle'
  | 'thin zone'
  | 'thin patch'
  | 'thin side'
  | 'thick edge'
  | 'thick middle'
  | 'thick zone'
  | 'thick patch';

export interface Place {
  /** as the end of "the coat is thin …": "at the outer edge" */
  readonly where: string;
  /** a word or two for charts: "edge" */
  readonly label: string;
  readonly points: OrientedPoints;
  /** distance from the middle of the glass, m */
  readonly radius: number;
  /** clock angle, rad; null for a zone all around */
  readonly angle: number | null;
}

export interface CaseFound {
  readonly kind: CoatCase;
  /** what the place in question is compared with */
  readonly from: Place;
  /** the place in question */
  readonly to: Place;
}

/** Share of the way from the clear aperture's inner to its outer radius that counts as the middle, and as the edge. */
const MIDDLE = 0.1;
const EDGE = 0.9;

type Shape = Coat['plant']['shape'];

function middleOf(shape: Shape): Place {
  const hasHole = shape.clearInnerRadius > 0;
  return {
    where: hasHole ? 'at the edge of the hole' : 'in the middle',
    label: hasHole ? 'hole edge' : 'middle',
    points: zoneAt(shape, 0),
    radius: shape.clearInnerRadius,
    angle: null,
  };
}

function edgeOf(shape: Shape): Place {
  return {
    where: 'at the outer edge',
    label: 'outer edge',
    points: zoneAt(shape, Infinity),
    radius: shape.clearOuterRadius,
    angle: null,
  };
}

function reachOf({ clearInnerRadius, clearOuterRadius }: Shape, radius: number): number {
  return (radius - clearInnerRadius) / (clearOuterRadius - clearInnerRadius);
}

/** The zone around a radius, named as the middle or the edge where it is one. */
function zoneNear(shape: Shape, radius: number): Place {
  const reach = reachOf(shape, radius);
  if (reach < MIDDLE) return middleOf(shape);
  if (reach > EDGE) return edgeOf(shape);
  const text = lengthFor(shape)(radius);
  return { where: `at radius ${text}`, label: `at ${text}`, points: zoneAt(shape, radius), radius, angle: null };
}

/** All around at a radius, as what a spot is compared with. */
function aroundAt(shape: Shape, radius: number): Place {
  return { ...zoneNear(shape, radius), where: 'all around at that radius', label: 'all around' };
}

function spotOf(shape: Shape, [x, y]: Extreme['position'], label: string): Place {
  const radius = Math.hypot(x - shape.centerX, y);
  const angle = (Math.atan2(y, x - shape.centerX) + 2 * Math.PI) % (2 * Math.PI);
  const where = `at radius ${lengthFor(shape)(radius)}, ${degrees(angle)}`;
  return { where, label, points: spotAt(shape, x, y), radius, angle };
}

interface Ring {
  readonly radius: number;
  readonly mean: number;
}

/** Rings of the profile within the clear aperture. */
function rings({ profile, plant: { shape } }: Coat): Ring[] {
  const slack = 1e-9 * shape.rimRadius;
  return Array.from(profile.radius, (radius, i) => ({ radius, mean: profile.mean[i]! })).filter(
    ({ radius, mean }) =>
      radius >= shape.clearInnerRadius - slack && radius <= shape.clearOuterRadius + slack && !Number.isNaN(mean),
  );
}

const nearestRing = (all: readonly Ring[], radius: number): Ring =>
  all.reduce((best, ring) => (Math.abs(ring.radius - radius) < Math.abs(best.radius - radius) ? ring : best));

/**
 * What to compare a middle, an edge or a zone with: the edge with the middle and the other way round, as
 * long as that place lies beyond the average, on the other side; else the zone that differs most.
 *
 * @param sign −1 if the place is thin, +1 if it is thick
 */
function counterpart(coat: Coat, all: readonly Ring[], place: Place, sign: number): Place {
  const { shape } = coat.plant;
  const reach = reachOf(shape, place.radius);
  const opposite = reach > EDGE ? shape.clearInnerRadius : reach < MIDDLE ? shape.clearOuterRadius : null;
  if (opposite !== null && sign * (coat.statistics.mean.value - nearestRing(all, opposite).mean) >= 0)
    return zoneNear(shape, opposite);
  return zoneNear(shape, all.reduce((best, ring) => (sign * (ring.mean - best.mean) < 0 ? ring : best)).radius);
}

/** Whether some filament gives nothing although others do. */
export const hasIdle = ({ plant }: Coat): boolean =>
  plant.filaments.some(({ outOfUse, charge }) => outOfUse || charge === 0);

/** An even coat may still be thin, or thick, as a whole: beyond the tolerance about the target. */
function evenCase({ statistics: { mean }, plant: { film } }: Coat): CoatCase {
  const off = mean.value / film.target - 1;
  if (Math.abs(off) <= film.tolerance) return 'even';
  return off < 0 ? 'thin all over' : 'thick all over';
}

/** Whether a case is one of an even coat. */
export const isEven = (kind: CoatCase): boolean => kind === 'even' || kind.endsWith('all over');

/** Finds the question that a coat raises. What is thin comes before what is thick. */
export function caseOf(coat: Coat): CaseFound {
  const { shape, film } = coat.plant;
  const { mean, minimum, maximum } = coat.statistics;
  if (!(mean.value > 0)) return { kind: 'bare', from: middleOf(shape), to: edgeOf(shape) };
  const isThin = 1 - minimum.value / mean.value > film.tolerance;
  const isThick = maximum.value / mean.value - 1 > film.tolerance;
  if (!isThin && !isThick) return { kind: evenCase(coat), from: middleOf(shape), to: edgeOf(shape) };
  const spot = isThin ? minimum : maximum;
  const sign = isThin ? -1 : 1;
  const word = isThin ? 'thin' : 'thick';
  const all = rings(coat);
  const radius = Math.hypot(spot.position[0] - shape.centerX, spot.position[1]);
  const ring = nearestRing(all, radius).mean;
  // most of the departure from the average shows only at some azimuths
  if (sign * (spot.value - ring) > sign * (ring - mean.value)) {
    const kind = isThin && hasIdle(coat) ? 'thin side' : (`${word} patch` as const);
    return { kind, from: aroundAt(shape, radius), to: spotOf(shape, spot.position, isThin ? 'thinnest' : 'thickest') };
  }
  const to = zoneNear(shape, radius);
  const reach = reachOf(shape, radius);
  const part = reach > EDGE ? 'edge' : reach < MIDDLE ? 'middle' : 'zone';
  return { kind: `${word} ${part}`, from: counterpart(coat, all, to, sign), to };
}
