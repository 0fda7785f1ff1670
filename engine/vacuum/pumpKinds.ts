/** Generic behaviour of pumps by kind: what a design need not say. */
import type { PumpKindName } from '../design/pumpingSchema.ts';

export interface PumpKind {
  /** [inlet pressure in Pa, share of the rated speed], pressures rising */
  readonly curve: readonly (readonly [number, number])[];
  /** Pa */
  readonly ultimate: number;
  /** speed for water vapour over that for air */
  readonly water: number;
  /** whether it pumps from the atmosphere down to the crossover; the others open there */
  readonly isRoughing: boolean;
  /** Pa, highest tank pressure at which it may be opened; a design may cross over lower */
  readonly opensBelow: number;
  readonly source: string;
}

/**
 * By kind. Curves are generic: use the maker's own where it is at hand.
 *
 * @see ranges as in J. F. O'Hanlon, A User's Guide to Vacuum Technology, from memory
 */
export const PUMP_KIND_TABLE: Readonly<Record<PumpKindName, PumpKind>> = {
  rotary: {
    curve: [
      [1, 1],
      [1e5, 1],
    ],
    ultimate: 1,
    water: 1,
    isRoughing: true,
    opensBelow: Infinity,
    source: 'one-stage, with gas ballast: 1e-2 mbar; common practice, no source',
  },
  roots: {
    curve: [
      [1e-2, 1],
      [1e3, 1],
      [1e4, 0.5],
    ],
    ultimate: 5e-2,
    water: 1,
    isRoughing: true,
    opensBelow: 1e3,
    source: 'from 10 mbar to 1e-3 mbar; O’Hanlon, from memory',
  },
  diffusion: {
    curve: [
      [1e-6, 1],
      [0.1, 1],
      [0.3, 0.6],
      [1, 0.2],
      [10, 0.02],
      [1e3, 2e-4],
    ],
    ultimate: 1e-5,
    water: 1,
    isRoughing: false,
    opensBelow: 15,
    source: 'full speed from 1e-3 mbar down, constant gas flow above; O’Hanlon, from memory',
  },
  turbo: {
    curve: [
      [1e-6, 1],
      [0.1, 1],
      [1, 0.5],
      [10, 0.05],
      [100, 5e-3],
    ],
    ultimate: 1e-6,
    water: 1,
    isRoughing: false,
    opensBelow: 15,
    source: 'full speed below 1e-3 mbar; common practice, no source',
  },
  cryo: {
    curve: [
      [1e-7, 1],
      [0.1, 1],
      [1, 0.7],
      [10, 0.1],
    ],
    ultimate: 1e-7,
    // water freezes on the whole outer stage at the ceiling of 14.7 l/s per cm², air on the inner one only
    water: 2.5,
    isRoughing: false,
    opensBelow: 40,
    source: 'water about 2.5 times nitrogen; common practice, no source',
  },
};

/** Compression that a Roots pump keeps with nothing to pump. Common practice, no source: 10 to 80. */
export const ROOTS_COMPRESSION = 40;

/** Share of the vapour that strikes a cold trap and stays on it. Common practice, no source. */
export const TRAP_CAPTURE = 0.5;
