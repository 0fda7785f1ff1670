/** The mirror: its reflecting surface, its outline and the body of glass behind it. */
import type { MirrorDesign } from '../design/designSchema.ts';

export interface AsphericTerm {
  /** even, ≥ 4 */
  readonly power: number;
  /** m^(1 − power) */
  readonly coefficient: number;
}

/** A conic with even aspheric terms, cut to an outline; all lengths in metres. */
export interface MirrorShape {
  /** 1/R at the vertex, 1/m: > 0 concave, < 0 convex, 0 flat */
  readonly curvature: number;
  readonly conicConstant: number;
  readonly aspheric: readonly AsphericTerm[];
  /** x of the middle of the glass; the parent's vertex is the origin */
  readonly centerX: number;
  readonly holeRadius: number;
  /** of a hexagon: the circle through its corners */
  readonly rimRadius: number;
  /** clock angle of one corner of a hexagon, rad; null for a round outline */
  readonly cornerAngle: number | null;
  readonly clearInnerRadius: number;
  readonly clearOuterRadius: number;
  readonly thickness: number;
}

/** The mirror's shape from its checked design. */
export function mirrorShape(design: MirrorDesign): MirrorShape {
  const rimRadius = design.outerDiameter / 2;
  const holeRadius = design.holeDiameter / 2;
  return {
    curvature: 1 / design.radiusOfCurvature,
    conicConstant: design.conicConstant,
    aspheric: design.aspheric ?? [],
    centerX: design.offAxisDistance,
    holeRadius,
    rimRadius,
    cornerAngle: design.outline === 'hexagon' ? design.cornerAngle : null,
    clearInnerRadius: Math.max(holeRadius, (design.clearAperture?.innerDiameter ?? 0) / 2),
    clearOuterRadius: Math.min(rimRadius, (design.clearAperture?.outerDiameter ?? Infinity) / 2),
    thickness: design.thickness ?? design.outerDiameter / 10,
  };
}

/**
 * Height of the surface above the vertex.
 *
 *     z(r) = c r² / (1 + √(1 − (1 + K) c² r²)) + Σ aᵢ r^pᵢ
 *
 * @param r [m] distance from the parent's axis
 * @returns [m], NaN where the conic does not reach
 * @see ISO 10110-12:2019, surfaces of rotational symmetry (from memory of the standard)
 */
export function sag(shape: MirrorShape, r: number): number {
  const { curvature: c, conicConstant: k } = shape;
  let z = (c * r * r) / (1 + Math.sqrt(1 - (1 + k) * c * c * r * r));
  for (const { power, coefficient } of shape.aspheric) z += coefficient * r ** power;
  return z;
}

/** Slope dz/dr of the surface; NaN where the conic does not reach. */
export function slope(shape: MirrorShape, r: number): number {
  const { curvature: c, conicConstant: k } = shape;
  let s = (c * r) / Math.sqrt(1 - (1 + k) * c * c * r * r);
  for (const { power, coefficient } of shape.aspheric) s += power * coefficient * r ** (power - 1);
  return s;
}

/**
 * Writes the point of the surface above (x, y) and its normal into slot i of the two arrays.
 *
 * Overwrites three slots of each; the normal points to +z, into the tank.
 */
export function surfacePointInto(
  position: Float64Array,
  normal: Float64Array,
  i: number,
  shape: MirrorShape,
  x: number,
  y: number,
): void {
  const r = Math.hypot(x, y);
  const s = slope(shape, r);
  const norm = 1 / Math.sqrt(1 + s * s);
  const o = 3 * i;
  position[o] = x;
  position[o + 1] = y;
  position[o + 2] = sag(shape, r);
  normal[o] = r > 0 ? (-s * norm * x) / r : 0;
  normal[o + 1] = r > 0 ? (-s * norm * y) / r : 0;
  normal[o + 2] = norm;
}

/** Radius of the glass's outline, from its own middle, at a clock angle, m. */
export function outlineRadius(shape: MirrorShape, angle: number): number {
  if (shape.cornerAngle === null) return shape.rimRadius;
  const sextant = Math.PI / 3;
  const turn = (angle - shape.cornerAngle) / sextant;
  const fromCorner = (turn - Math.floor(turn)) * sextant;
  return (shape.rimRadius * Math.cos(sextant / 2)) / Math.cos(fromCorner - sextant / 2);
}

/** Whether (x, y) lies on the glass as seen face-on, hole left out. */
export function isOnGlass(shape: MirrorShape, x: number, y: number): boolean {
  const r = Math.hypot(x - shape.centerX, y);
  if (r < shape.holeRadius || r > shape.rimRadius) return false;
  return shape.cornerAngle === null || r <= outlineRadius(shape, Math.atan2(y, x - shape.centerX));
}

/** Lowest and highest z of the face, m: sampled along its radii, exact where the sag is monotonic. */
export function faceHeights(shape: MirrorShape): { readonly low: number; readonly high: number } {
  const near = Math.max(0, shape.centerX - shape.rimRadius);
  const far = shape.centerX + shape.rimRadius;
  const inner = shape.centerX > 0 ? near : shape.holeRadius;
  let low = Infinity;
  let high = -Infinity;
  for (let i = 0; i <= 256; i++) {
    const z = sag(shape, inner + ((far - inner) * i) / 256);
    low = Math.min(low, z);
    high = Math.max(high, z);
  }
  return { low, high };
}

/** z of the flat back of the glass, m. */
export function backHeight(shape: MirrorShape): number {
  return faceHeights(shape).low - shape.thickness;
}

/** Whether a point lies inside the glass. */
export function isInGlass(shape: MirrorShape, x: number, y: number, z: number): boolean {
  return isOnGlass(shape, x, y) && z < sag(shape, Math.hypot(x, y)) && z > backHeight(shape);
}
