/** Points of the surface where columns are computed: Chebyshev radii times evenly spaced azimuths. */
import { surfacePointInto, type MirrorShape } from '../geometry/mirrorShape.ts';
import { createOrientedPoints, type OrientedPoints } from '../geometry/orientedPoints.ts';
import { chebyshevNodes } from './chebyshev.ts';

/** Numbers of nodes; `azimuthCount` is a multiple of 4. */
export interface NodeCounts {
  readonly radialCount: number;
  readonly azimuthCount: number;
}

/**
 * The nodes, radius running fastest: azimuths 2πj/N for j = 0 … N − 1, or j = 0 … N/2 for a field that
 * is even in the azimuth. Beyond a hexagon's sides they lie on the surface's continuation.
 */
export function faceNodes(shape: MirrorShape, counts: NodeCounts, isEven: boolean): OrientedPoints {
  const { radialCount, azimuthCount } = counts;
  const radii = chebyshevNodes(radialCount, shape.holeRadius, shape.rimRadius);
  const azimuths = isEven ? azimuthCount / 2 + 1 : azimuthCount;
  const points = createOrientedPoints(azimuths * radialCount);
  for (let j = 0; j < azimuths; j++) {
    const angle = (2 * Math.PI * j) / azimuthCount;
    const [cos, sin] = [Math.cos(angle), Math.sin(angle)];
    for (let k = 0; k < radialCount; k++) {
      const r = radii[k]!;
      const i = j * radialCount + k;
      surfacePointInto(points.position, points.normal, i, shape, shape.centerX + r * cos, r * sin);
    }
  }
  return points;
}
