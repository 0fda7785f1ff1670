/** Radii and weights for integrals over the clear aperture and its edge. */
import { slope, type MirrorShape } from '../geometry/mirrorShape.ts';
import { gaussLegendre } from './gaussLegendre.ts';

/** Share of the radius that the edge ratio takes as the edge, as in geometry/faceGrid.ts. */
const EDGE_SHARE = 0.02;
/** Radial nodes beyond those that the polynomials need: for the surface's own slope. */
const MORE_RADII = 6;
const EDGE_RADII = 8;
/** Radii where fields are added up and searched. */
export interface RadialRule {
  /** m; both ends of the clear aperture are among them, for the extremes */
  readonly radii: Float64Array;
  /** [radii] m; 0 at both ends */
  readonly weights: Float64Array;
  /** index of the first radius of the edge zone */
  readonly edge: number;
  /** r √(1 + z′²) at a radius, by the slope on the mirror's axis, m */
  readonly areaAt: (r: number) => number;
}

/** Gauss–Legendre radii of the clear aperture and of its edge that integrate squares of `count` polynomials exactly. */
export function radialRule(shape: MirrorShape, count: number): RadialRule {
  const { clearInnerRadius: inner, clearOuterRadius: outer } = shape;
  const edgeFrom = Math.max(inner, (1 - EDGE_SHARE) * outer);
  const main = gaussLegendre(count + MORE_RADII, inner, edgeFrom);
  const rim = gaussLegendre(EDGE_RADII, edgeFrom, outer);
  return {
    radii: Float64Array.of(inner, ...main.nodes, ...rim.nodes, outer),
    weights: Float64Array.of(0, ...main.weights, ...rim.weights, 0),
    edge: count + MORE_RADII + 1,
    areaAt: (r) => areaAt(shape, r, 1, 0),
  };
}

/** r √(1 + z′²): area for each step in radius and azimuth, m. */
export function areaAt(shape: MirrorShape, r: number, cos: number, sin: number): number {
  const s = slope(shape, Math.hypot(shape.centerX + r * cos, r * sin));
  return r * Math.sqrt(1 + s * s);
}
