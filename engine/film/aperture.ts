/** The clear aperture as starlight sees it: projected areas at the nodes of a face. */
import { faceWeights, type FaceWeights } from '../coat/faceWeights.ts';
import type { Face } from '../geometry/face.ts';

export interface Aperture {
  readonly face: Face;
  readonly weights: FaceWeights;
  /** [points] projected area along the axis, m²; zero outside the clear aperture */
  readonly fine: Float64Array;
  /** the same by the embedded lower rule, m² */
  readonly coarse: Float64Array;
  /** m² */
  readonly area: number;
  readonly coarseArea: number;
  /** nodes of the clear aperture */
  readonly nodes: Int32Array;
  /** radius of the circle around the clear aperture, m, and the x of its middle */
  readonly radius: number;
  readonly centerX: number;
}

const known = new WeakMap<Face, Aperture>();

/** The aperture of a face; worked out once for each face. */
export function apertureOf(face: Face): Aperture {
  const found = known.get(face);
  if (found) return found;
  const weights = faceWeights(face);
  const { normal } = face.points;
  const projected = (areas: Float64Array): Float64Array => areas.map((area, i) => area * normal[3 * i + 2]!);
  const total = (areas: Float64Array): number => areas.reduce((sum, area) => sum + area, 0);
  const fine = projected(weights.clear.fine);
  const coarse = projected(weights.clear.coarse);
  const { clearOuterRadius, centerX } = face.grid.shape;
  const aperture: Aperture = {
    face,
    weights,
    fine,
    coarse,
    area: total(fine),
    coarseArea: total(coarse),
    nodes: weights.clearNodes.fine,
    radius: clearOuterRadius,
    centerX,
  };
  known.set(face, aperture);
  return aperture;
}

/** A mean over the aperture, by the full rule, and how far the lower rule is from it. */
export function apertureMean(
  aperture: Aperture,
  field: Float64Array,
): { readonly value: number; readonly error: number } {
  let [fine, coarse] = [0, 0];
  for (const node of aperture.nodes) {
    fine += aperture.fine[node]! * field[node]!;
    coarse += aperture.coarse[node]! * field[node]!;
  }
  const value = fine / aperture.area;
  return { value, error: Math.abs(value - coarse / aperture.coarseArea) };
}
