/** What a mirror is lit with: relative power against wavelength. */
import { readSpectralCsv } from './spectralCsv.ts';

export interface Spectrum {
  readonly name: string;
  /** shortest and longest wavelength that the spectrum is known at, m */
  readonly range: readonly [number, number];
  /** relative power per wavelength, any unit; @param wavelength [m] within the range */
  readonly power: (wavelength: number) => number;
}

/** Second radiation constant hc/k, m·K. */
const C2 = 1.438776877e-2;

/**
 * A black body's power per wavelength, to within a factor.
 *
 *     M ∝ λ⁻⁵ / (exp(c₂ / λT) − 1)
 *
 * @param temperature [K] > 0
 * @see M. Planck (1901); c₂ from CODATA 2018
 */
export function blackBody(temperature: number): Spectrum {
  if (!(temperature > 0)) throw new RangeError(`expected a temperature above zero; found ${temperature} K`);
  // the factor at 1 µm keeps the numbers near 1
  const power = (wavelength: number): number => (wavelength * 1e6) ** -5 / Math.expm1(C2 / (wavelength * temperature));
  return { name: `black body at ${temperature} K`, range: [0, Infinity], power };
}

export type ReadSpectrum =
  { readonly ok: true; readonly spectrum: Spectrum } | { readonly ok: false; readonly messages: readonly string[] };

/** Reads a spectrum from CSV: columns wavelength and power, a unit row under the heading; linear between the rows. */
export function readSpectrumCsv(text: string, name: string): ReadSpectrum {
  const { wavelength, columns, messages } = readSpectralCsv(text, [
    { name: 'power', min: 0, saying: 'of zero or more' },
  ]);
  if (messages.length > 0) return { ok: false, messages };
  const power = columns.get('power') ?? [];
  if (!power.some((value) => value > 0))
    return { ok: false, messages: ['column power: expected at least one number greater than zero'] };
  const valueAt = (at: number): number => {
    const above = Math.min(
      wavelength.length - 1,
      Math.max(
        1,
        wavelength.findIndex((row) => row >= at),
      ),
    );
    const [low, high] = [wavelength[above - 1]!, wavelength[above]!];
    return power[above - 1]! + ((at - low) / (high - low)) * (power[above]! - power[above - 1]!);
  };
  return { ok: true, spectrum: { name, range: [wavelength[0]!, wavelength.at(-1)!], power: valueAt } };
}
