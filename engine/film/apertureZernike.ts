/** Polynomials that are orthonormal over the clear aperture itself, whatever its shape, and fits with them. */
import type { Face } from '../geometry/face.ts';
import { apertureOf, type Aperture } from './aperture.ts';
import { zernikeInto, zernikeSet, type ZernikeSet } from './zernike.ts';

/** Radial order of a fit: 45 polynomials. */
export const FIT_ORDER = 8;

export interface ApertureBasis {
  readonly aperture: Aperture;
  readonly set: ZernikeSet;
  /** [terms²] row j holds F_j in terms of the circle's Z_1 … Z_j */
  readonly fromCircle: Float64Array;
  /** [terms] whether the nodes can tell a polynomial from those before it; one that they can't is left out */
  readonly isKept: readonly boolean[];
}

/** A pivot below this share of the polynomial's own norm is rounding: the aperture can't tell the polynomial apart. */
const SMALLEST_PIVOT = 1e-9;

const known = new WeakMap<Face, Map<number, ApertureBasis>>();

/**
 * Zernike polynomials made orthonormal over the clear aperture by Gram–Schmidt in Noll's order, with the
 * projected areas of the quadrature's own nodes as weights; worked out once for each face.
 *
 *     (1/A) Σ w F_i F_j = δ_ij,  F_j = Σ_{i≤j} c_ji Z_i(ρ, φ),  ρ = distance / radius of the circle around the aperture
 *
 * On a circle F = Z to within the quadrature's error; on an annulus they are Mahajan's annular polynomials;
 * on a hexagon their counterparts for the hexagon. Done as the Cholesky factor of the Gram matrix.
 *
 * @see V. N. Mahajan, JOSA 71 (1981) 75; V. N. Mahajan, G. Dai, JOSA A 24 (2007) 2994
 */
export function apertureBasis(face: Face, order: number = FIT_ORDER): ApertureBasis {
  const ofFace = known.get(face) ?? new Map<number, ApertureBasis>();
  known.set(face, ofFace);
  const found = ofFace.get(order);
  if (found) return found;
  const aperture = apertureOf(face);
  const set = zernikeSet(order);
  const basis = orthonormalBasis(aperture, set);
  ofFace.set(order, basis);
  return basis;
}

/**
 * Coefficients beyond this make rounding count: a Gram matrix forgets as many digits as their square has.
 * Then the factor is worked out once more.
 */
const LARGE_COEFFICIENT = 100;

/** Cholesky's factor, once more from the polynomials it gives where the aperture hardly tells them apart. */
function orthonormalBasis(aperture: Aperture, set: ZernikeSet): ApertureBasis {
  const count = set.terms.length;
  const { inverse, isKept } = inverseCholesky(gramMatrix(aperture, set, null), count);
  if (inverse.every((value) => Math.abs(value) < LARGE_COEFFICIENT))
    return { aperture, set, fromCircle: inverse, isKept };
  const again = inverseCholesky(gramMatrix(aperture, set, inverse), count);
  return { aperture, set, fromCircle: lowerProduct(again.inverse, inverse, count), isKept };
}

/** Product of two lower triangular matrices. */
function lowerProduct(a: Float64Array, b: Float64Array, count: number): Float64Array {
  const product = new Float64Array(count * count);
  for (let i = 0; i < count; i++)
    for (let k = 0; k <= i; k++)
      for (let j = 0; j <= k; j++) product[i * count + j]! += a[i * count + k]! * b[k * count + j]!;
  return product;
}

/** Circle polynomials at one node of the face. */
function circleInto(
  out: Float64Array,
  { face, centerX, radius }: Aperture,
  set: ZernikeSet,
  node: number,
): Float64Array {
  const { position } = face.points;
  return zernikeInto(out, set, (position[3 * node]! - centerX) / radius, position[3 * node + 1]! / radius);
}

/** Nodes that share one pass over the matrix, so that it is read and written a quarter as often. */
const BLOCK = 4;

/** (1/A) Σ w Z_i Z_j, lower triangle; with a matrix, of the polynomials that it makes of Z. */
function gramMatrix(aperture: Aperture, set: ZernikeSet, fromCircle: Float64Array | null): Float64Array {
  const count = set.terms.length;
  const gram = new Float64Array(count * count);
  const at = new Float64Array(count);
  // [term · BLOCK + node]; a missing node of the last block weighs nothing
  const z = new Float64Array(BLOCK * count);
  const weighted = new Float64Array(BLOCK * count);
  const { nodes } = aperture;
  for (let first = 0; first < nodes.length; first += BLOCK) {
    for (let b = 0; b < BLOCK; b++) {
      const node = nodes[Math.min(first + b, nodes.length - 1)]!;
      const weight = first + b < nodes.length ? aperture.fine[node]! / aperture.area : 0;
      circleInto(at, aperture, set, node);
      if (fromCircle) transformInPlace(at, fromCircle);
      for (let j = 0; j < count; j++) {
        z[BLOCK * j + b] = at[j]!;
        weighted[BLOCK * j + b] = weight * at[j]!;
      }
    }
    addBlockInto(gram, weighted, z, count);
  }
  return gram;
}

/** Multiplies a vector by a lower triangular matrix, last row first, so that nothing is read after it is overwritten. */
function transformInPlace(vector: Float64Array, lower: Float64Array): void {
  const count = vector.length;
  for (let i = count - 1; i >= 0; i--) {
    let sum = 0;
    for (let j = 0; j <= i; j++) sum += lower[i * count + j]! * vector[j]!;
    vector[i] = sum;
  }
}

/** Adds one block's products to the lower triangle. */
function addBlockInto(gram: Float64Array, weighted: Float64Array, z: Float64Array, count: number): void {
  for (let i = 0; i < count; i++) {
    const p = weighted[BLOCK * i]!;
    const q = weighted[BLOCK * i + 1]!;
    const r = weighted[BLOCK * i + 2]!;
    const s = weighted[BLOCK * i + 3]!;
    const row = i * count;
    for (let j = 0, o = 0; j <= i; j++, o += BLOCK)
      gram[row + j]! += p * z[o]! + q * z[o + 1]! + r * z[o + 2]! + s * z[o + 3]!;
  }
}

interface Factor {
  /** inverse of the Cholesky factor; dependent polynomials get an empty row */
  readonly inverse: Float64Array;
  readonly isKept: readonly boolean[];
}

function inverseCholesky(gram: Float64Array, count: number): Factor {
  const lower = new Float64Array(count * count);
  const isKept: boolean[] = [];
  for (let i = 0; i < count; i++) {
    for (let j = 0; j <= i; j++) {
      let sum = gram[i * count + j]!;
      for (let k = 0; k < j; k++) sum -= lower[i * count + k]! * lower[j * count + k]!;
      if (j < i) lower[i * count + j] = isKept[j]! ? sum / lower[j * count + j]! : 0;
      else {
        isKept.push(sum > SMALLEST_PIVOT * gram[i * count + i]!);
        lower[i * count + i] = isKept[i]! ? Math.sqrt(sum) : 1;
      }
    }
  }
  const inverse = new Float64Array(count * count);
  for (let i = 0; i < count; i++) {
    if (!isKept[i]!) continue;
    inverse[i * count + i] = 1 / lower[i * count + i]!;
    for (let j = 0; j < i; j++) {
      let sum = 0;
      for (let k = j; k < i; k++) sum -= lower[i * count + k]! * inverse[k * count + j]!;
      inverse[i * count + j] = sum / lower[i * count + i]!;
    }
  }
  return { inverse, isKept };
}

/**
 * Least-squares coefficients of a field over the aperture, weighted by area.
 *
 *     a_j = (1/A) Σ w f F_j
 *
 * As the polynomials are orthonormal, each coefficient is the rms that its term adds, and none depends
 * on which others are fitted.
 *
 * @param field [points] any unit
 * @returns [terms] in the field's unit; zero for a polynomial that the basis leaves out
 */
export function fitAperture({ aperture, set, fromCircle }: ApertureBasis, field: Float64Array): Float64Array {
  const count = set.terms.length;
  const moments = new Float64Array(count);
  const z = new Float64Array(count);
  for (const node of aperture.nodes) {
    circleInto(z, aperture, set, node);
    const scaled = (aperture.fine[node]! * field[node]!) / aperture.area;
    for (let j = 0; j < count; j++) moments[j]! += scaled * z[j]!;
  }
  const coefficients = new Float64Array(count);
  for (let j = 0; j < count; j++) {
    for (let i = 0; i <= j; i++) coefficients[j]! += fromCircle[j * count + i]! * moments[i]!;
  }
  return coefficients;
}

/** The same fit told in the circle's polynomials, which are not orthogonal over an annulus or a hexagon. */
export function circleCoefficients({ set, fromCircle }: ApertureBasis, coefficients: Float64Array): Float64Array {
  const count = set.terms.length;
  const circle = new Float64Array(count);
  for (let j = 0; j < count; j++) {
    for (let i = 0; i <= j; i++) circle[i]! += coefficients[j]! * fromCircle[j * count + i]!;
  }
  return circle;
}

/**
 * Adds a sum of aperture polynomials to a field at every point of the face.
 *
 * @param out [points] added to
 * @param coefficients [terms]
 * @returns out
 */
export function addTermsInto(out: Float64Array, basis: ApertureBasis, coefficients: Float64Array): Float64Array {
  const { aperture, set } = basis;
  const circle = circleCoefficients(basis, coefficients);
  let used = circle.length;
  while (used > 1 && circle[used - 1] === 0) used--;
  // terms of low order alone need no evaluation of the others
  const needed = zernikeSet(set.terms[used - 1]!.n);
  const z = new Float64Array(needed.terms.length);
  for (let node = 0; node < out.length; node++) {
    circleInto(z, aperture, needed, node);
    for (let j = 0; j < used; j++) out[node]! += circle[j]! * z[j]!;
  }
  return out;
}
