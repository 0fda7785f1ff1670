/**
 * A smooth field through counted cells of the mirror.
 *
 * Scattered vapour has lost the sharp features of its sources, so that few terms describe it: polynomials in the
 * share of the area times harmonics of the clock angle, as many as Zernike's polynomials of radial order 8, fitted
 * to the cells' averages. Terms that do not stand out of the counting noise are left out.
 */
import type { MirrorShape } from '../geometry/mirrorShape.ts';
import type { FacePlace, TallyGrid } from './tallyGrid.ts';

/** Highest order in the radius, to which a harmonic of order m leaves ORDER − m, and highest harmonic. */
const ORDER = 8;
const HARMONIC = 6;
/** Standard errors that a term must reach to be kept. */
const KEEP = 3;
/** Mean square of a normal variate that is known to lie within KEEP standard deviations. */
const CUT_SQUARE = 0.9733;
/** Points of the midpoint rule over a ring. */
const FINE = 32;

/** One harmonic's radial functions: rows turn the raw functions into orthonormal ones over the rings. */
interface Radial {
  readonly order: number;
  /** for each function: its value on each ring, orthonormal */
  readonly rings: readonly Float64Array[];
  /** for each function: its coefficients on the raw functions */
  readonly rows: readonly Float64Array[];
}

export interface SmoothField {
  readonly termCount: number;
  /** terms kept */
  readonly keptCount: number;
  /** χ² of the cells about the field over its degrees of freedom: about 1 if the smooth field is enough */
  readonly misfit: number;
  /** value at a place, in the unit of the cells */
  value(place: FacePlace): number;
  /** value of each term at a place, for variances of sums; overwrites */
  termsInto(out: Float64Array, place: FacePlace): Float64Array;
  /**
   * Standard error of a linear combination of terms: the noise of those kept, what those left out may have
   * held, and a widening by the misfit.
   */
  standardError(terms: Float64Array): number;
}

/** Legendre polynomial of degree n on 0 to 1. */
function legendre(n: number, x: number): number {
  const t = 2 * x - 1;
  let [before, now] = [1, t];
  if (n === 0) return 1;
  for (let k = 1; k < n; k++) [before, now] = [now, ((2 * k + 1) * t * now - k * before) / (k + 1)];
  return now;
}

/** Raw radial function: on glass without a hole a harmonic must vanish in the middle as rᵐ does. */
function raw(n: number, order: number, hasHole: boolean, x: number): number {
  return legendre(n, x) * (hasHole ? 1 : x ** (order / 2));
}

function radialOf(order: number, hasHole: boolean, ringCount: number): Radial {
  const degrees = Math.min(Math.floor((ORDER - order) / 2), ringCount - 1);
  const averages = Array.from({ length: degrees + 1 }, (_, n) =>
    Float64Array.from({ length: ringCount }, (_unused, i) => {
      let sum = 0;
      for (let k = 0; k < FINE; k++) sum += raw(n, order, hasHole, (i + (k + 0.5) / FINE) / ringCount);
      return sum / FINE;
    }),
  );
  const rings: Float64Array[] = [];
  const rows: Float64Array[] = [];
  averages.forEach((average, n) => {
    const vector = Float64Array.from(average);
    const row = new Float64Array(degrees + 1);
    row[n] = 1;
    // twice is enough: W. Kahan's rule for Gram–Schmidt
    for (let pass = 0; pass < 2; pass++) {
      rings.forEach((other, m) => {
        const dot = dotOf(vector, other);
        addScaled(vector, other, -dot);
        addScaled(row, rows[m]!, -dot);
      });
    }
    const norm = Math.sqrt(dotOf(vector, vector));
    rings.push(vector.map((value) => value / norm));
    rows.push(row.map((value) => value / norm));
  });
  return { order, rings, rows };
}

function dotOf(a: Float64Array, b: Float64Array): number {
  let sum = 0;
  for (let i = 0; i < a.length; i++) sum += a[i]! * b[i]!;
  return sum;
}

function addScaled(out: Float64Array, values: Float64Array, factor: number): void {
  for (let i = 0; i < out.length; i++) out[i]! += factor * values[i]!;
}

/** A term: one radial function times one harmonic. */
interface Term {
  readonly radial: Radial;
  readonly n: number;
  readonly isSine: boolean;
  /** [cells] orthonormal over all cells */
  readonly onCells: Float64Array;
}

function termsOf(grid: TallyGrid, hasHole: boolean): Term[] {
  const terms: Term[] = [];
  for (let order = 0; order <= Math.min(HARMONIC, Math.floor((grid.sectors - 1) / 2)); order++) {
    const radial = radialOf(order, hasHole, grid.rings);
    for (const isSine of order === 0 ? [false] : [false, true])
      radial.rings.forEach((ring, n) => {
        const onCells = new Float64Array(grid.rings * grid.sectors);
        for (let j = 0; j < grid.sectors; j++) {
          const wave = harmonic(order, isSine, (2 * Math.PI * (j + 0.5)) / grid.sectors, grid.sectors);
          for (let i = 0; i < grid.rings; i++) onCells[j * grid.rings + i] = ring[i]! * wave;
        }
        terms.push({ radial, n, isSine, onCells });
      });
  }
  return terms;
}

/** Harmonic at the middle of a sector, orthonormal over the sectors. */
function harmonic(order: number, isSine: boolean, angle: number, sectors: number): number {
  const scale = Math.sqrt((order === 0 ? 1 : 2) / sectors);
  return scale * (isSine ? Math.sin(order * angle) : Math.cos(order * angle));
}

/**
 * Power that terms left out may have held, over that of their noise: what their mean square has beyond noise
 * cut off at KEEP, plus one standard deviation of that mean.
 *
 * @param squares squares of the coefficients left out, over their variances
 */
function powerLeftOut(squares: Float64Array): number {
  if (squares.length === 0) return 0;
  const mean = squares.reduce((sum, square) => sum + square, 0) / squares.length;
  return Math.max(0, mean - CUT_SQUARE) + Math.sqrt(2 / squares.length);
}

/** What a harmonic's average over a sector is of its value in the middle. */
function sectorAverage(order: number, sectors: number): number {
  const half = (Math.PI * order) / sectors;
  return order === 0 ? 1 : Math.sin(half) / half;
}

/**
 * Fits a smooth field to averages over the mirror's cells.
 *
 * @param values [cells] averages, any unit
 * @param errors [cells] their standard errors, independent
 */
export function smoothField(
  grid: TallyGrid,
  shape: MirrorShape,
  values: Float64Array,
  errors: Float64Array,
): SmoothField {
  const hasHole = shape.holeRadius > 0;
  const terms = termsOf(grid, hasHole);
  const coefficients = Float64Array.from(terms, ({ onCells }) => dotOf(values, onCells));
  const variances = errors.map((error) => error * error);
  const covariance = terms.map(({ onCells }) => {
    const weighted = onCells.map((value, c) => value * variances[c]!);
    return Float64Array.from(terms, (other) => dotOf(weighted, other.onCells));
  });
  const kept = coefficients.map((a, k) => (k === 0 || Math.abs(a) > KEEP * Math.sqrt(covariance[k]![k]!) ? a : 0));
  const keptCount = kept.reduce((sum, a) => sum + (a === 0 ? 0 : 1), 0);
  const missed = Math.sqrt(
    powerLeftOut(
      coefficients.map((a, k) => (kept[k] === 0 ? (a * a) / covariance[k]![k]! : NaN)).filter((q) => q >= 0),
    ),
  );
  let chi2 = 0;
  values.forEach((value, c) => {
    let fitted = 0;
    for (let k = 0; k < terms.length; k++) fitted += kept[k]! * terms[k]!.onCells[c]!;
    if (errors[c]! > 0) chi2 += ((value - fitted) / errors[c]!) ** 2;
  });
  const misfit = chi2 / Math.max(1, values.length - keptCount);
  const widened = Math.sqrt(Math.max(1, misfit));
  const scratch = new Float64Array(terms.length);

  const termsInto = (out: Float64Array, { share, angle }: FacePlace): Float64Array => {
    const rawAt: Float64Array[] = [];
    terms.forEach(({ radial: { order, rows }, n, isSine }, k) => {
      rawAt[order] ??= Float64Array.from(rows, (_, m) => raw(m, order, hasHole, share));
      const wave = harmonic(order, isSine, angle, grid.sectors) / sectorAverage(order, grid.sectors);
      out[k] = dotOf(rows[n]!, rawAt[order]) * wave;
    });
    return out;
  };
  return {
    termCount: terms.length,
    keptCount,
    misfit,
    termsInto,
    value: (place) => dotOf(kept, termsInto(scratch, place)),
    standardError: (at) => {
      // terms left out count by the power that they may have held
      const counted = at.map((value, k) => (kept[k] === 0 ? missed * value : value));
      let variance = 0;
      covariance.forEach((row, k) => (variance += counted[k]! * dotOf(row, counted)));
      return widened * Math.sqrt(Math.max(0, variance));
    },
  };
}
