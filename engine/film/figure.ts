/** The coat as an error of the mirror's figure. */
import type { Coat } from '../coat/coat.ts';
import { extremeOf } from '../coat/extremes.ts';
import type { Cell } from '../geometry/face.ts';
import type { Estimate } from '../coat/statistics.ts';
import { apertureMean, type Aperture } from './aperture.ts';
import { addTermsInto, apertureBasis, circleCoefficients, FIT_ORDER, fitAperture } from './apertureZernike.ts';
import { nanometres, waves } from './words.ts';
import { DEFOCUS, PISTON, TILT, type ZernikeTerm } from './zernike.ts';

/** What the telescope takes out by itself: aligning removes tilt, focusing removes defocus; piston never matters. */
export type Removable = 'tilt' | 'defocus';

/** An error of the surface or of the wavefront over the clear aperture, m. */
export interface Departure {
  /** highest minus lowest */
  readonly peakToValley: Estimate;
  /** about its mean, weighted by projected area */
  readonly rms: Estimate;
}

export interface FigureTerm extends ZernikeTerm {
  /** what the term adds to the rms of the surface, with its sign, m */
  readonly coefficient: number;
}

export interface Figure {
  /** m, for the waves */
  readonly wavelength: number;
  readonly removed: readonly Removable[];
  /** [points] thickness minus its mean and what is removed, m; positive where the coat stands out toward the light */
  readonly surface: Float64Array;
  /** with only the mean taken off */
  readonly asCoated: { readonly surface: Departure; readonly wavefront: Departure };
  /** with what is removed taken off too */
  readonly corrected: { readonly surface: Departure; readonly wavefront: Departure };
  /** aperture polynomials in Noll's order; piston is the mean thickness */
  readonly terms: readonly FigureTerm[];
  /** rms of the corrected surface that the terms leave unexplained, m */
  readonly remainder: number;
  /** peak of a point's image against a perfect coat's, from the corrected wavefront */
  readonly strehl: number;
  /** how far the coat moves the mirror's focus, toward +z positive, m; null for a flat */
  readonly focusShift: number | null;
  readonly sentence: string;
}

export interface FigureOptions {
  /** m */
  readonly wavelength: number;
  readonly remove?: readonly Removable[] | undefined;
  /** radial order of the fit */
  readonly order?: number;
}

/** A mirror's surface error counts twice in the wavefront: the light travels it out and back. */
const DOUBLED = 2;

const doubled = ({ value, error }: Estimate): Estimate => ({ value: DOUBLED * value, error: DOUBLED * error });

function withWavefront(surface: Departure): { readonly surface: Departure; readonly wavefront: Departure } {
  return { surface, wavefront: { peakToValley: doubled(surface.peakToValley), rms: doubled(surface.rms) } };
}

/** A refined cell lies at a shadow edge, where nothing may be read between the nodes. */
const isRefined = ({ depth }: Cell): boolean => depth > 0;

function rmsOf(aperture: Aperture, field: Float64Array): Estimate {
  const mean = apertureMean(aperture, field).value;
  const square = apertureMean(
    aperture,
    field.map((value) => (value - mean) ** 2),
  );
  const value = Math.sqrt(Math.max(0, square.value));
  return { value, error: Math.abs(value - Math.sqrt(square.value + square.error)) };
}

function departureOf(aperture: Aperture, field: Float64Array): Departure {
  const { face, weights } = aperture;
  const highest = extremeOf(face, weights, isRefined, field, 1);
  const lowest = extremeOf(face, weights, isRefined, field, -1);
  return {
    peakToValley: { value: highest.value - lowest.value, error: highest.error + lowest.error },
    rms: rmsOf(aperture, field),
  };
}

/**
 * How far a surface term q·ρ² moves the focus of a mirror of radius R and aperture radius a.
 *
 *     Δf = ΔR/2 = −R² q / a²
 */
function focusShift(curvature: number, quadratic: number, radius: number): number | null {
  return curvature === 0 ? null : -quadratic / (curvature * radius) ** 2;
}

/** Wavefront rms from Strehl 0.99 and 0.8 on, in waves (A. Maréchal 1947: λ/14 keeps 0.8 of the peak). */
const UNSEEN = 1 / 63;
const DIFFRACTION_LIMIT = 1 / 14;

function sentenceOf({ wavelength, removed, asCoated, corrected, strehl }: Omit<Figure, 'sentence'>): string {
  const peak = asCoated.wavefront.peakToValley.value;
  const rms = corrected.wavefront.rms.value / wavelength;
  const after = removed.includes('defocus') ? ' after refocusing' : removed.includes('tilt') ? ' after aligning' : '';
  const verdict =
    rms < UNSEEN
      ? 'no image will show it'
      : rms < DIFFRACTION_LIMIT
        ? `the sharpest image keeps ${(100 * strehl).toFixed(0)} % of its peak`
        : 'it spoils a diffraction-limited image';
  return `The coat adds ${nanometres(peak)} peak to valley to the wavefront (${waves(peak / wavelength)} at ${nanometres(wavelength)}), ${waves(rms)} rms${after}: ${verdict}.`;
}

/**
 * The figure error that a coat adds.
 *
 * The reflecting surface is the top of the coat, so the thickness map minus its mean is the error of the
 * surface, positive toward the light; the wavefront error is twice that, positive where the path is
 * shorter. Assumes: opaque aluminium (the phase on reflection does not change with thickness), light
 * near normal to the surface. Errors come from the coat's own quadrature.
 */
export function figureOf(coat: Coat, options: FigureOptions): Figure {
  const { wavelength, remove = ['tilt', 'defocus'], order = FIT_ORDER } = options;
  const { face, thickness, statistics } = coat;
  const basis = apertureBasis(face, Math.max(2, order));
  const { aperture, set } = basis;
  const coefficients = fitAperture(basis, thickness);
  const taken = coefficients.map((value, j) => {
    const noll = j + 1;
    const isTilt = remove.includes('tilt') && (noll === TILT[0] || noll === TILT[1]);
    return noll === PISTON || isTilt || (remove.includes('defocus') && noll === DEFOCUS) ? -value : 0;
  });
  const surface = addTermsInto(thickness.slice(), basis, taken);
  const left = coefficients.map((value, j) => (taken[j] === 0 ? value : 0));
  const asCoated: Departure = {
    peakToValley: {
      value: statistics.maximum.value - statistics.minimum.value,
      error: statistics.maximum.error + statistics.minimum.error,
    },
    rms: rmsOf(aperture, thickness),
  };
  const corrected = remove.length === 0 ? asCoated : departureOf(aperture, surface);
  const explained = left.reduce((sum, value) => sum + value * value, 0);
  const quadratic = circleCoefficients(
    basis,
    coefficients.map((value, j) => (j + 1 === DEFOCUS ? value : 0)),
  )[DEFOCUS - 1]!;
  const figure = {
    wavelength,
    removed: remove,
    surface,
    asCoated: withWavefront(asCoated),
    corrected: withWavefront(corrected),
    terms: set.terms.map((term, j) => ({ ...term, coefficient: coefficients[j]! })),
    remainder: Math.sqrt(Math.max(0, corrected.rms.value ** 2 - explained)),
    strehl: Math.exp(-(((2 * Math.PI * DOUBLED * corrected.rms.value) / wavelength) ** 2)),
    // Z4 = √3 (2ρ² − 1)
    focusShift: focusShift(face.grid.shape.curvature, 2 * Math.sqrt(3) * quadratic, aperture.radius),
  };
  return { ...figure, sentence: sentenceOf(figure) };
}
