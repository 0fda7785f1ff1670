/** The film on a mirror, as light meets it: overcoat, oxide, aluminium, glass. */
import type { Design } from '../design/designSchema.ts';
import { ALUMINIUM } from './materials/aluminium.ts';
import { ALUMINIUM_OXIDE } from './materials/aluminiumOxide.ts';
import { indexAt, rangeOf, type Material } from './materials/indexTable.ts';
import { OVERCOAT_MATERIALS, SUBSTRATE_MATERIALS } from './materials/materials.ts';
import { createSolution, createStack, RP, RS, solveStackInto, TP, TS, type Stack } from './stack.ts';

/** A film without its aluminium's thickness, which changes over the mirror. */
export interface MirrorFilm {
  readonly substrate: Material;
  readonly metal: Material;
  readonly oxide: Material;
  /** m */
  readonly oxideThickness: number;
  readonly overcoat: Material | null;
  /** m */
  readonly overcoatThickness: number;
}

/** The film that a design describes, over fresh aluminium with the built-in indices. */
export function mirrorFilm({ substrate, oxide, overcoat }: Design['film']): MirrorFilm {
  return {
    substrate: SUBSTRATE_MATERIALS[substrate],
    metal: ALUMINIUM,
    oxide: ALUMINIUM_OXIDE,
    oxideThickness: oxide,
    overcoat: overcoat ? OVERCOAT_MATERIALS[overcoat.material] : null,
    overcoatThickness: overcoat?.thickness ?? 0,
  };
}

/** Bare metal: what a perfect fresh coat of the same aluminium would be. */
export const withoutLayers = (film: MirrorFilm): MirrorFilm => ({
  ...film,
  oxideThickness: 0,
  overcoat: null,
  overcoatThickness: 0,
});

/** Wavelengths that every material of a film is known at, and which materials set the limits. */
export interface KnownRange {
  /** m */
  readonly low: number;
  readonly high: number;
  readonly lowMaterial: string;
  readonly highMaterial: string;
}

/** The range of wavelengths that a film's tables share; layers of no thickness do not count. */
export function knownRange(film: MirrorFilm): KnownRange {
  const materials = [film.metal, film.substrate];
  if (film.oxideThickness > 0) materials.push(film.oxide);
  if (film.overcoat) materials.push(film.overcoat);
  const ranges = materials.map((material) => ({ name: material.name, range: rangeOf(material) }));
  const lowest = ranges.reduce((a, b) => (b.range[0] > a.range[0] ? b : a));
  const highest = ranges.reduce((a, b) => (b.range[1] < a.range[1] ? b : a));
  return { low: lowest.range[0], high: highest.range[1], lowMaterial: lowest.name, highMaterial: highest.name };
}

const METAL = 2;
const LAYERS = 3;

/** A film's stack at one wavelength, ready for any thickness of the metal. */
export interface FilmAtWavelength {
  /** m */
  readonly wavelength: number;
  readonly stack: Stack;
}

/**
 * Looks up a film's indices at a wavelength.
 *
 * @throws RangeError where a material of the film has no index
 */
export function filmAt(film: MirrorFilm, wavelength: number): FilmAtWavelength {
  const stack = createStack(LAYERS);
  const layers: readonly (readonly [Material | null, number])[] = [
    [film.overcoat, film.overcoatThickness],
    [film.oxide, film.oxideThickness],
    [film.metal, 0],
    [film.substrate, 0],
  ];
  layers.forEach(([material, thickness], j) => {
    if (!material || (thickness === 0 && j < METAL)) return;
    const { n, k } = indexAt(material, wavelength);
    stack.n[j] = n;
    stack.k[j] = k;
    stack.thickness[j] = thickness;
  });
  return { wavelength, stack };
}

/** The same film with metal all the way down: what an opaque coat tends to. */
export function opaqueFilmAt(film: MirrorFilm, wavelength: number): FilmAtWavelength {
  const at = filmAt({ ...film, substrate: film.metal }, wavelength);
  at.stack.thickness[METAL] = 0;
  return at;
}

/** Shares of the light for one polarisation or their mean; they sum to 1, each from 0 on. */
export interface Shares {
  readonly reflected: number;
  /** into the glass */
  readonly transmitted: number;
  readonly absorbed: number;
}

export interface FilmOptics {
  readonly s: Shares;
  readonly p: Shares;
  /** of unpolarised light */
  readonly mean: Shares;
}

/** What is neither reflected nor transmitted is absorbed; of a clear stack that is nothing, give or take a rounding. */
const shares = (reflected: number, transmitted: number): Shares => ({
  reflected,
  transmitted,
  absorbed: Math.max(0, 1 - reflected - transmitted),
});

/**
 * Reflected, transmitted and absorbed light at one thickness, wavelength and angle.
 *
 * @param thickness [m] of the aluminium, ≥ 0
 * @param wavelength [m]
 * @param angle [rad] of incidence in air, 0 ≤ angle < π/2
 * @throws RangeError where a material has no index, and for an angle or thickness out of range
 */
export function filmOptics(film: MirrorFilm, thickness: number, wavelength: number, angle = 0): FilmOptics {
  if (!(thickness >= 0)) throw new RangeError(`expected a thickness of zero or more; found ${thickness} m`);
  const out = solveFilmInto(createSolution(), filmAt(film, wavelength), thickness, sineOf(angle));
  const [rs, rp, ts, tp] = [out[RS]!, out[RP]!, out[TS]!, out[TP]!];
  return { s: shares(rs, ts), p: shares(rp, tp), mean: shares((rs + rp) / 2, (ts + tp) / 2) };
}

/**
 * Sine of an angle of incidence.
 *
 * @throws RangeError unless 0 ≤ angle < π/2
 */
export function sineOf(angle: number): number {
  if (angle >= 0 && angle < Math.PI / 2) return Math.sin(angle);
  throw new RangeError(`expected an angle of incidence from 0 to below 90 deg; found ${angle} rad`);
}

/** Solves a film for one thickness of its metal; see solveStackInto. */
export function solveFilmInto(
  out: Float64Array,
  { wavelength, stack }: FilmAtWavelength,
  thickness: number,
  sinIncidence: number,
): Float64Array {
  stack.thickness[METAL] = thickness;
  return solveStackInto(out, stack, wavelength, sinIncidence);
}
