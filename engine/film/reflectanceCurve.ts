/** Reflectance against the aluminium's thickness, as a table fine enough to map a whole mirror through. */
import type { Light } from './light.ts';
import { filmAt, opaqueFilmAt, solveFilmInto, type FilmAtWavelength, type MirrorFilm } from './mirrorFilm.ts';
import { createSolution, RP, RS, TP, TS } from './stack.ts';

/** A film under a light at an angle: reflected and transmitted shares at any thickness. */
export interface LitFilm {
  /** share of unpolarised light reflected; @param thickness [m] ≥ 0 */
  readonly reflected: (thickness: number) => number;
  /** share that enters the glass; @param thickness [m] ≥ 0 */
  readonly transmitted: (thickness: number) => number;
  /** what the reflectance tends to as the coat thickens */
  readonly opaqueReflected: number;
}

/**
 * Averages a film over a light.
 *
 * @param sinIncidence [1] sine of the angle of incidence in air
 * @throws RangeError where a material has no index at one of the light's wavelengths
 */
export function litFilm(film: MirrorFilm, light: Light, sinIncidence = 0): LitFilm {
  const films = Array.from(light.wavelength, (wavelength) => filmAt(film, wavelength));
  const out = createSolution();
  const averaged = (of: readonly FilmAtWavelength[], s: number, p: number) => (thickness: number) => {
    let sum = 0;
    for (let i = 0; i < of.length; i++) {
      solveFilmInto(out, of[i]!, thickness, sinIncidence);
      sum += (light.weight[i]! * (out[s]! + out[p]!)) / 2;
    }
    return sum;
  };
  const opaque = Array.from(light.wavelength, (wavelength) => opaqueFilmAt(film, wavelength));
  return {
    reflected: averaged(films, RS, RP),
    transmitted: averaged(films, TS, TP),
    opaqueReflected: averaged(opaque, RS, RP)(0),
  };
}

/** Values at evenly spaced thicknesses, cubic between them. */
export interface ReflectanceCurve {
  /** thickness of the first value, m */
  readonly low: number;
  /** m */
  readonly step: number;
  readonly values: Float64Array;
  /** largest difference from the exact value, found halfway between the values */
  readonly error: number;
}

const FIRST_COUNT = 33;
const MAX_COUNT = 2049;
/** Far below what a reflectometer reads, 1e-3. */
const WANTED_ERROR = 1e-6;

/** Value at `at` steps from the first one: the cubic through the four nearest values. */
function cubicAt(values: Float64Array, at: number): number {
  const i = Math.min(values.length - 3, Math.max(1, Math.floor(at)));
  const u = at - i;
  const [a, b, c, d] = [u + 1, u, u - 1, u - 2];
  return (
    (values[i - 1]! * b * c * d) / -6 +
    (values[i]! * a * c * d) / 2 -
    (values[i + 1]! * a * b * d) / 2 +
    (values[i + 2]! * a * b * c) / 6
  );
}

/**
 * Tabulates a function of thickness, halving the step until the values halfway agree with the cubic.
 *
 * @param low [m]
 * @param high [m] ≥ low
 */
export function reflectanceCurve(
  exact: (thickness: number) => number,
  low: number,
  high: number,
  wantedError = WANTED_ERROR,
): ReflectanceCurve {
  const span = Math.max(high - low, 1e-12);
  let values = Float64Array.from({ length: FIRST_COUNT }, (_, i) => exact(low + (span * i) / (FIRST_COUNT - 1)));
  for (;;) {
    const count = values.length;
    const step = span / (count - 1);
    const finer = new Float64Array(2 * count - 1);
    let error = 0;
    for (let i = 0; i < count; i++) {
      finer[2 * i] = values[i]!;
      if (i + 1 === count) break;
      finer[2 * i + 1] = exact(low + step * (i + 0.5));
      error = Math.max(error, Math.abs(finer[2 * i + 1]! - cubicAt(values, i + 0.5)));
    }
    if (error <= wantedError || count >= MAX_COUNT) return { low, step, values, error };
    values = finer;
  }
}

/**
 * Reads a curve at many thicknesses.
 *
 * @param out [thickness.length] overwritten; may be `thickness` itself
 * @param thickness [m] within the curve's range
 * @returns out
 */
export function readCurveInto(
  out: Float64Array,
  { low, step, values }: ReflectanceCurve,
  thickness: Float64Array,
): Float64Array {
  for (let i = 0; i < thickness.length; i++) out[i] = cubicAt(values, (thickness[i]! - low) / step);
  return out;
}
