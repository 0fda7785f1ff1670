/** Places of a mirror that are compared: zones all around, and spots. Pairs of points share an index. */
import { createOrientedPoints, type OrientedPoints } from '../geometry/orientedPoints.ts';
import { outlineRadius, surfacePointInto, type MirrorShape } from '../geometry/mirrorShape.ts';

/** Width of a zone as a share of the clear outer radius, as in the edge ratio. */
export const ZONE_WIDTH = 0.02;
/** Azimuths of a zone: a prime, so that a ring of any other number of filaments is averaged without beats. */
const AZIMUTHS = 73;
/** Gauss-Legendre nodes on 0 … 1 with equal weights. */
const ACROSS = [0.5 - Math.sqrt(1 / 12), 0.5 + Math.sqrt(1 / 12)] as const;
/** Points of every place, so that any two can be paired. */
export const PLACE_POINTS = AZIMUTHS * ACROSS.length;

/**
 * A zone all around the mirror, its points weighing alike: two radii, at the Gauss nodes of r², at each azimuth.
 *
 * The zone keeps within the clear aperture and follows the outline of the glass. A mean over it is exact
 * for what goes with r² up to its cube.
 *
 * @param radius its middle from the middle of the glass, m; 0 for the innermost zone, Infinity for the outermost
 */
export function zoneAt(shape: MirrorShape, radius: number): OrientedPoints {
  const points = createOrientedPoints(PLACE_POINTS);
  const width = ZONE_WIDTH * shape.clearOuterRadius;
  for (let k = 0; k < AZIMUTHS; k++) {
    const angle = (2 * Math.PI * k) / AZIMUTHS;
    const outer = Math.min(shape.clearOuterRadius, outlineRadius(shape, angle));
    const low = Math.max(shape.clearInnerRadius, Math.min(radius - width / 2, outer - width));
    const [from, to] = [low ** 2, Math.min(outer, low + width) ** 2];
    ACROSS.forEach((share, i) => {
      const r = Math.sqrt(from + share * (to - from));
      const x = shape.centerX + r * Math.cos(angle);
      surfacePointInto(points.position, points.normal, ACROSS.length * k + i, shape, x, r * Math.sin(angle));
    });
  }
  return points;
}

/** One point of the mirror above (x, y), m, to be compared with a zone: repeated as often as that has points. */
export function spotAt(shape: MirrorShape, x: number, y: number): OrientedPoints {
  const points = createOrientedPoints(PLACE_POINTS);
  for (let i = 0; i < PLACE_POINTS; i++) surfacePointInto(points.position, points.normal, i, shape, x, y);
  return points;
}
