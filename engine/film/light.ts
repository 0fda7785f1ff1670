/** The light that a reflectance is averaged over: one wavelength, a photometric band, or a source's spectrum. */
import type { Spectrum } from './spectrum.ts';

/** Wavelengths and the weight of each; the weights sum to 1. */
export interface Light {
  readonly name: string;
  /** m */
  readonly wavelength: Float64Array;
  readonly weight: Float64Array;
}

export interface Band {
  readonly name: string;
  /** effective wavelength, m */
  readonly center: number;
  /** full width at half maximum, m */
  readonly width: number;
  readonly source: string;
}

const BESSELL =
  'M. S. Bessell, PASP 91 (1979) 589: widths and centres to 10 nm as listed in the NASA PDS comet-polarimetry filter file; centres to 1 nm from memory of M. S. Bessell, ARA&A 43 (2005) 293, ±2 nm';

const band = (name: string, center_nm: number, width_nm: number): Band => ({
  name,
  center: center_nm * 1e-9,
  width: width_nm * 1e-9,
  source: BESSELL,
});

/** The broad photometric bands, Johnson's U B V and Cousins' R I. */
export const BANDS = {
  U: band('U', 366, 65),
  B: band('B', 436, 89),
  V: band('V', 545, 84),
  R: band('R', 641, 158),
  I: band('I', 798, 154),
} as const;

export type BandName = keyof typeof BANDS;

/** Four-point Gauss–Legendre rule on [0, 1]. */
const GAUSS = [
  [0.069431844202973, 0.173927422568727],
  [0.330009478207572, 0.326072577431273],
  [0.669990521792428, 0.326072577431273],
  [0.930568155797027, 0.173927422568727],
] as const;

/** Panels of a whole spectrum, even in the logarithm of the wavelength. */
const SPECTRUM_PANELS = 16;

/** Gathers ∫ response dλ over panels into weights that sum to 1. */
function lightOver(name: string, edges: readonly number[], response: (wavelength: number) => number): Light {
  const wavelength: number[] = [];
  const weight: number[] = [];
  for (let p = 0; p + 1 < edges.length; p++) {
    const [low, width] = [edges[p]!, edges[p + 1]! - edges[p]!];
    for (const [at, share] of GAUSS) {
      wavelength.push(low + at * width);
      weight.push(share * width * response(low + at * width));
    }
  }
  const total = weight.reduce((sum, value) => sum + value, 0);
  if (!(total > 0)) throw new RangeError(`${name} carries no light between ${edges[0]} and ${edges.at(-1)} m`);
  return {
    name,
    wavelength: Float64Array.from(wavelength),
    weight: Float64Array.from(weight, (value) => value / total),
  };
}

/** Light of one wavelength. */
export function lineLight(wavelength: number): Light {
  return {
    name: `${Number((wavelength * 1e9).toPrecision(6))} nm`,
    wavelength: Float64Array.of(wavelength),
    weight: Float64Array.of(1),
  };
}

/**
 * Light of a band: a trapezoid of the published width, flat over half of it, with feet 1.5 widths apart.
 *
 * A trapezoid and not a Gaussian, because its feet end: no index is asked for far outside the band.
 *
 * @param source power that the band is lit with; equal power at all wavelengths unless given
 */
export function bandLight({ name, center, width }: Band, source?: Spectrum): Light {
  const [foot, flat] = [0.75 * width, 0.25 * width];
  const edges = [center - foot, center - flat, center + flat, center + foot];
  const response = (wavelength: number): number =>
    Math.min(1, (foot - Math.abs(wavelength - center)) / (foot - flat)) * (source?.power(wavelength) ?? 1);
  if (source && (source.range[0] > edges[0]! || source.range[1] < edges[3]!))
    throw new RangeError(`${source.name} does not cover the band ${name}`);
  return lightOver(source ? `${name} band of ${source.name}` : `${name} band`, edges, response);
}

/**
 * Light of a source between two wavelengths, or as far as its spectrum goes.
 *
 * @param low [m]
 * @param high [m]
 */
export function spectrumLight(source: Spectrum, low: number, high: number): Light {
  const [from, to] = [Math.max(low, source.range[0]), Math.min(high, source.range[1])];
  if (!(to > from)) throw new RangeError(`${source.name} has no light from ${low} to ${high} m`);
  const edges = Array.from({ length: SPECTRUM_PANELS + 1 }, (_, i) => from * (to / from) ** (i / SPECTRUM_PANELS));
  return lightOver(source.name, edges, source.power);
}
