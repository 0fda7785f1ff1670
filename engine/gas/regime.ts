/** Names for how a gas behaves: the flow regime by its Knudsen number, the vacuum by its pressure. */

export type FlowRegime = 'molecular' | 'intermediate' | 'viscous';

/**
 * Knudsen numbers between the regimes: viscous below the first, molecular above the second.
 *
 * @see ISO 3529-1:2019 for the names; limits as in vacuum handbooks (K. Jousten, Handbook of Vacuum Technology,
 * from memory); other books call the flow molecular from 1 on
 */
export const VISCOUS_BELOW = 0.01;
export const MOLECULAR_ABOVE = 0.5;

/** Mean free path over a length that matters, such as the throw or the tank's diameter. */
export function knudsenNumber(freePath: number, length: number): number {
  return freePath / length;
}

/** The regime of a gas with this Knudsen number. */
export function flowRegime(knudsen: number): FlowRegime {
  if (knudsen < VISCOUS_BELOW) return 'viscous';
  return knudsen > MOLECULAR_ABOVE ? 'molecular' : 'intermediate';
}

export interface VacuumRange {
  readonly name: string;
  /** Pa; the range reaches from here, exclusive, up to the one before */
  readonly above: number;
}

/**
 * Ranges of vacuum, from the atmosphere down.
 *
 * @see ISO 3529-1:2019, 3.1.2, which calls the limits typical and approximate (limits from memory; the edition
 * of 1981 ends high vacuum at 1e-5 Pa)
 */
export const VACUUM_RANGES: readonly VacuumRange[] = [
  { name: 'low (rough) vacuum', above: 100 },
  { name: 'medium (fine) vacuum', above: 0.1 },
  { name: 'high vacuum', above: 1e-6 },
  { name: 'ultra-high vacuum', above: 1e-9 },
  { name: 'extreme-high vacuum', above: 0 },
];

/** Lowest pressure that still counts as atmospheric, Pa: Mount Everest in bad weather. @see ISO 3529-1:2019, 3.1.2, note 2 */
const ATMOSPHERIC_ABOVE = 31e3;

/** The range of vacuum that a pressure lies in. */
export function vacuumRange(pressure: number): string {
  if (pressure > ATMOSPHERIC_ABOVE) return 'atmospheric pressure';
  return VACUUM_RANGES.find(({ above }) => pressure > above)?.name ?? 'perfect vacuum';
}
