/** The residual gas: what its molecules weigh, how large they are, how many there are. */
import { AVOGADRO, BOLTZMANN } from './constants.ts';

/** One gas, its molecules taken as hard spheres. */
export interface Gas {
  /** kg/mol */
  readonly molarMass: number;
  /** m, hard-sphere diameter from viscosity at 25 °C; grows by a few percent toward 0 °C */
  readonly diameter: number;
  readonly source: string;
}

const CRC = 'CRC Handbook of Chemistry and Physics, 100th edition: mean free paths from viscosity at 25 °C';

export const GASES = {
  air: { molarMass: 28.965e-3, diameter: 3.66e-10, source: CRC },
  N2: { molarMass: 28.0134e-3, diameter: 3.7e-10, source: CRC },
  O2: { molarMass: 31.9988e-3, diameter: 3.55e-10, source: CRC },
  H2O: {
    molarMass: 18.01528e-3,
    diameter: 4.45e-10,
    source: 'from the viscosity of the vapour, 9.9 µPa·s at 300 K; other books give 4.6 to 4.7 Å (from memory)',
  },
  Ar: { molarMass: 39.948e-3, diameter: 3.58e-10, source: CRC },
  H2: { molarMass: 2.01588e-3, diameter: 2.71e-10, source: CRC },
  He: { molarMass: 4.002602e-3, diameter: 2.15e-10, source: CRC },
} as const satisfies Readonly<Record<string, Gas>>;

export type GasName = keyof typeof GASES;

/** Number fractions by gas; they need not sum to 1. */
export type Mixture = Readonly<Partial<Record<GasName, number>>>;

/** Dry air by number. @see U.S. Standard Atmosphere 1976, table 3, rounded (from memory) */
export const DRY_AIR: Mixture = { N2: 0.7809, O2: 0.2095, Ar: 0.0093 };

/** A gas at rest, alike everywhere. */
export interface GasState {
  /** Pa, ≥ 0; 0 is a perfect vacuum */
  readonly pressure: number;
  /** K, > 0 */
  readonly temperature: number;
  readonly mixture: Mixture;
}

/** One gas of a mixture, counted. */
export interface Component {
  readonly name: GasName;
  /** kg */
  readonly mass: number;
  /** m */
  readonly diameter: number;
  /** 1/m³ */
  readonly density: number;
}

/** A gas of one kind. */
export function pureGas(name: GasName, pressure: number, temperature: number): GasState {
  return { pressure, temperature, mixture: { [name]: 1 } };
}

/**
 * The gases of a state with their number densities.
 *
 *     n_j = x_j p / kT
 *
 * @throws RangeError if pressure, temperature or a fraction is not a number that a gas can have
 */
export function componentsOf({ pressure, temperature, mixture }: GasState): Component[] {
  if (!(pressure >= 0 && pressure < Infinity))
    throw new RangeError(`pressure: expected 0 Pa or more; found ${pressure}`);
  if (!(temperature > 0 && temperature < Infinity))
    throw new RangeError(`temperature: expected a temperature above 0 K; found ${temperature}`);
  const parts = Object.entries(mixture) as [GasName, number][];
  for (const [name, fraction] of parts)
    if (!(fraction >= 0 && fraction < Infinity))
      throw new RangeError(`mixture.${name}: expected a fraction of 0 or more; found ${fraction}`);
  const whole = parts.reduce((sum, [, fraction]) => sum + fraction, 0);
  if (!(whole > 0)) throw new RangeError('mixture: expected at least one gas with a fraction above 0');
  const density = pressure / (BOLTZMANN * temperature);
  return parts
    .filter(([, fraction]) => fraction > 0)
    .map(([name, fraction]) => {
      const { molarMass, diameter } = GASES[name];
      return { name, mass: molarMass / AVOGADRO, diameter, density: (density * fraction) / whole };
    });
}
