/** Everything the Film stage says of a coat. */
import type { Coat } from '../coat/coat.ts';
import type { Estimate } from '../coat/statistics.ts';
import type { Design } from '../design/designSchema.ts';
import type { Problem } from '../design/problem.ts';
import { apertureMean, apertureOf } from './aperture.ts';
import { figureOf, type Figure, type Removable } from './figure.ts';
import { lineLight, type Light } from './light.ts';
import { lightLost, type LightLost } from './lightLost.ts';
import { filmAt, knownRange, mirrorFilm, sineOf, solveFilmInto, withoutLayers } from './mirrorFilm.ts';
import type { KnownRange, MirrorFilm } from './mirrorFilm.ts';
import { opaqueThickness, OPACITY_CRITERIA, type OpacityCriterion } from './opacity.ts';
import { OXIDE_STAGES, oxideAfter, type OxideEstimate } from './oxideGrowth.ts';
import { qualityOf, type Contamination, type Quality } from './quality.ts';
import { litFilm, readCurveInto, reflectanceCurve, type LitFilm } from './reflectanceCurve.ts';
import { totalScatter } from './scatter.ts';
import { createSolution, RP, RS, TP, TS } from './stack.ts';
import { percent } from './words.ts';

export interface FilmOptions {
  /** light that reflectances are averaged over; the design's wavelength unless given */
  readonly light?: Light;
  /** angle of incidence, rad; 0 unless given */
  readonly angle?: number;
  /** another film than the design's, such as one with indices of the user's own */
  readonly film?: MirrorFilm;
  /** what the telescope corrects; tilt and defocus unless given */
  readonly remove?: readonly Removable[];
  /** what the Vacuum stage says of the shot */
  readonly contamination?: Contamination | null;
}

/** A place of the mirror with its film. */
export interface FilmPlace {
  /** m */
  readonly thickness: Estimate;
  readonly reflected: number;
  readonly transmitted: number;
}

/** Shares of unpolarised light against the wavelength, at three thicknesses. */
export interface FilmSpectrum {
  /** rising, m; from 0.2 to 2.5 µm as far as the film's indices are known */
  readonly wavelength: Float64Array;
  readonly atThinnest: Float64Array;
  readonly atMean: Float64Array;
  readonly atThickest: Float64Array;
  /** transmitted at the thinnest place */
  readonly transmitted: Float64Array;
  readonly known: KnownRange;
}

/** Reflected and transmitted shares against the thickness, under the report's light. */
export interface ThicknessCurve {
  /** rising from 0, m */
  readonly thickness: Float64Array;
  readonly reflected: Float64Array;
  readonly transmitted: Float64Array;
  /** the mirror's own range, m */
  readonly mirror: { readonly low: number; readonly mean: number; readonly high: number };
}

export interface Opaqueness {
  readonly criterion: OpacityCriterion;
  /** smallest thickness that meets it, m; Infinity if none does */
  readonly thickness: number;
  /** whether the thinnest place meets it */
  readonly isMet: boolean;
}

export interface Ageing {
  /** s in air */
  readonly time: number;
  readonly oxide: OxideEstimate;
  /** at the mean thickness */
  readonly reflected: number;
}

export interface FilmReport {
  readonly light: string;
  /** rad */
  readonly angle: number;
  /** [points] share of unpolarised light reflected */
  readonly reflectanceMap: Float64Array;
  /** of the map against the exact formula */
  readonly mapError: number;
  /** over the clear aperture by projected area, scatter not taken off */
  readonly reflectance: Estimate;
  readonly thinnest: FilmPlace;
  readonly mean: FilmPlace;
  readonly thickest: FilmPlace;
  readonly spectrum: FilmSpectrum;
  readonly curve: ThicknessCurve;
  readonly opaque: readonly Opaqueness[];
  readonly ageing: readonly Ageing[];
  readonly figure: Figure;
  readonly quality: Quality;
  readonly lightLost: LightLost;
  readonly sentence: string;
}

const SHORTEST = 0.2e-6;
const LONGEST = 2.5e-6;
const SPECTRUM_POINTS = 181;
const CURVE_POINTS = 161;
/** s */
const YEAR = 365.25 * 86_400;
const AGES = [...OXIDE_STAGES.map(({ time }) => time), YEAR].toSorted((p, q) => p - q);

/**
 * What keeps a film from being worked out at its wavelength, for forms and lists of problems.
 *
 * @returns problems with their paths in the design
 */
export function filmProblems(film: Design['film']): Problem[] {
  const { low, high, lowMaterial, highMaterial } = knownRange(mirrorFilm(film));
  const { wavelength } = film;
  if (wavelength >= low && wavelength <= high) return [];
  const [material, limit] = wavelength < low ? [lowMaterial, low] : [highMaterial, high];
  const side = wavelength < low ? 'from' : 'up to';
  const inNanometres = (metres: number): string => `${Number((metres * 1e9).toPrecision(6))} nm`;
  const message = `expected a wavelength ${side} ${inNanometres(limit)}, as far as the index of ${material} is known; found ${inNanometres(wavelength)}`;
  return [{ path: 'film.wavelength', message }];
}

/** Wavelengths even in their logarithm over what is known of the film, within 0.2 to 2.5 µm. */
function spectrumWavelengths({ low, high }: KnownRange): Float64Array {
  const [from, to] = [Math.max(low, SHORTEST), Math.min(high, LONGEST)];
  const last = SPECTRUM_POINTS - 1;
  return Float64Array.from({ length: SPECTRUM_POINTS }, (_, i) =>
    i === 0 ? from : i === last ? to : from * (to / from) ** (i / last),
  );
}

function filmSpectrum(film: MirrorFilm, thicknesses: readonly number[], sinIncidence: number): FilmSpectrum {
  const known = knownRange(film);
  const wavelength = spectrumWavelengths(known);
  const out = createSolution();
  const reflected = thicknesses.map(() => new Float64Array(wavelength.length));
  const transmitted = new Float64Array(wavelength.length);
  wavelength.forEach((at, i) => {
    const lit = filmAt(film, at);
    thicknesses.forEach((thickness, t) => {
      solveFilmInto(out, lit, thickness, sinIncidence);
      reflected[t]![i] = (out[RS]! + out[RP]!) / 2;
      if (t === 0) transmitted[i] = (out[TS]! + out[TP]!) / 2;
    });
  });
  return {
    wavelength,
    atThinnest: reflected[0]!,
    atMean: reflected[1]!,
    atThickest: reflected[2]!,
    transmitted,
    known,
  };
}

function thicknessCurve(lit: LitFilm, coat: Coat): ThicknessCurve {
  const { minimum, mean, maximum } = coat.statistics;
  const end = Math.max(2 * coat.plant.film.target, 1.2 * maximum.value);
  const thickness = Float64Array.from({ length: CURVE_POINTS }, (_, i) => (end * i) / (CURVE_POINTS - 1));
  return {
    thickness,
    reflected: thickness.map(lit.reflected),
    transmitted: thickness.map(lit.transmitted),
    mirror: { low: minimum.value, mean: mean.value, high: maximum.value },
  };
}

/** A thickness found between nodes may be a rounding below zero. */
const place = (lit: LitFilm, { value, error }: Estimate): FilmPlace => ({
  thickness: { value, error },
  reflected: lit.reflected(Math.max(0, value)),
  transmitted: lit.transmitted(Math.max(0, value)),
});

/** Scatter averaged over a light. */
function scatterOf(roughness: number, { wavelength, weight }: Light, cosIncidence: number): number {
  return wavelength.reduce((sum, at, i) => sum + weight[i]! * totalScatter(roughness, at, cosIncidence), 0);
}

/** Reflectance of every point of the mirror, through a table of the exact formula. */
function reflectanceMap(lit: LitFilm, thickness: Float64Array): { readonly map: Float64Array; readonly error: number } {
  let [low, high] = [Infinity, 0];
  for (const value of thickness) {
    if (value < low) low = value;
    if (value > high) high = value;
  }
  const curve = reflectanceCurve(lit.reflected, low, high);
  return { map: readCurveInto(new Float64Array(thickness.length), curve, thickness), error: curve.error };
}

function sentenceOf({ light, reflectance, thinnest, mean, opaque }: Omit<FilmReport, 'sentence'>): string {
  if (!(mean.thickness.value > 0)) return `The mirror stays bare glass: it reflects ${percent(reflectance.value)}.`;
  const worst = Math.abs(thinnest.reflected - reflectance.value) >= 5e-4;
  const at = worst ? `, ${percent(thinnest.reflected)} at the thinnest place` : ' all over';
  const lamp = opaque[0]?.isMet === true ? 'no lamp shows through it' : 'a lamp shows through it';
  return `The mirror reflects ${percent(reflectance.value)} (${light})${at}; in a lit room ${lamp}.`;
}

/**
 * What a coated mirror reflects and lets through, how good its film is, and what it does to the figure.
 *
 * Pure; the aperture's polynomials are remembered for each face, so that a changed charge costs little.
 *
 * @throws RangeError where a material has no index in the light asked for (see filmProblems), or for an angle
 * outside 0 to below 90°
 */
export function filmReport(coat: Coat, options: FilmOptions = {}): FilmReport {
  const { film: design, shape } = coat.plant;
  const { angle = 0, light = lineLight(design.wavelength), film = mirrorFilm(design) } = options;
  const sinIncidence = sineOf(angle);
  const lit = litFilm(film, light, sinIncidence);
  const { minimum, mean, maximum } = coat.statistics;
  const { map, error: mapError } = reflectanceMap(lit, coat.thickness);
  const overAperture = apertureMean(apertureOf(coat.face), map);
  const reflectance = { value: overAperture.value, error: overAperture.error + mapError };
  const scatter = scatterOf(design.roughness, light, Math.cos(angle));
  const specular = { value: reflectance.value * (1 - scatter), error: reflectance.error };
  const perfect = litFilm(withoutLayers(film), light, sinIncidence).opaqueReflected;
  const thinnest = place(lit, minimum);
  const body = {
    light: light.name,
    angle,
    reflectanceMap: map,
    mapError,
    reflectance,
    thinnest,
    mean: place(lit, mean),
    thickest: place(lit, maximum),
    spectrum: filmSpectrum(
      film,
      [minimum, mean, maximum].map(({ value }) => Math.max(0, value)),
      sinIncidence,
    ),
    curve: thicknessCurve(lit, coat),
    opaque: OPACITY_CRITERIA.map((criterion): Opaqueness => {
      const thickness = opaqueThickness(lit, criterion.when);
      return { criterion, thickness, isMet: minimum.value >= thickness };
    }),
    ageing: AGES.map((time): Ageing => {
      const oxide = oxideAfter(time);
      const aged = litFilm({ ...film, oxideThickness: oxide.value }, light, sinIncidence);
      return { time, oxide, reflected: aged.reflected(mean.value) };
    }),
    figure: figureOf(coat, { wavelength: design.wavelength, remove: options.remove }),
    quality: qualityOf(coat, options.contamination ?? null, design.roughness, scatter),
    lightLost: lightLost(
      specular,
      perfect,
      design.lastYear?.reflectance ?? null,
      design.mirrors,
      2 * shape.clearOuterRadius,
    ),
  };
  return { ...body, sentence: sentenceOf(body) };
}
