/** Residual gas built into the film while it grows: how many molecules stick for each aluminium atom. */
import { ALUMINIUM_MASS, BOLTZMANN } from './constants.ts';
import { componentsOf, DRY_AIR, type GasName, type GasState } from './gases.ts';
import { componentImpingement } from './impingement.ts';

/** Share of the molecules of a gas that stay when they strike growing aluminium, with where it comes from. */
interface Sticking {
  readonly share: number;
  readonly source: string;
}

const REACTIVE_O2 =
  'clean Al(111) takes 0.018 (Schouborg 2009), growing polycrystalline films 0.1 to 1 (from memory): 1 is the cautious choice';

/** Sticking on growing aluminium unless told otherwise: reactive gases all, inert ones none. */
export const STICKING: Readonly<Record<GasName, Sticking>> = {
  H2O: { share: 1, source: 'dissociates fully on Al(111) at 300 K: J. Chem. Phys. 87 (1987) 5804' },
  O2: { share: 1, source: REACTIVE_O2 },
  air: { share: DRY_AIR.O2 ?? 0, source: `its oxygen alone: ${REACTIVE_O2}` },
  N2: {
    share: 0,
    source: 'no loss of far-ultraviolet reflectance up to 1e6 L (published exposure tests of protected aluminium)',
  },
  H2: {
    share: 0,
    source: 'molecular hydrogen does not stay on aluminium at room temperature (common practice, no source)',
  },
  Ar: { share: 0, source: 'inert (common practice, no source)' },
  He: { share: 0, source: 'inert (common practice, no source)' },
};

/** Sticking by gas, where it differs from STICKING. */
export type StickingChoice = Readonly<Partial<Record<GasName, number>>>;

/** Molecules that a square metre of growing film takes up each second, Σ s Φ, 1/(m²·s). */
export function gasUptake(gas: GasState, sticking: StickingChoice = {}): number {
  return componentsOf(gas).reduce(
    (sum, part) =>
      sum + (sticking[part.name] ?? STICKING[part.name].share) * componentImpingement(part, gas.temperature),
    0,
  );
}

/** Aluminium atoms in a square metre of film, 1/m². */
export function atomsInFilm(thickness: number, density: number): number {
  return (thickness * density) / ALUMINIUM_MASS;
}

/**
 * Molecules that stick for each aluminium atom that arrives.
 *
 *     K = Σ s Φ_gas / Φ_Al,  Φ_Al = rate · ρ / m_Al
 *
 * @param rate [m/s] growth of the film
 * @param density [kg/m³]
 * @returns [1], Infinity where nothing grows
 * @see M. Ohring, Materials Science of Thin Films: C = 5.83e-2 p M_a / (√(M_g T) ρ ḋ), Torr, g/cm³, cm/s (from memory)
 */
export function arrivalRatio(gas: GasState, rate: number, density: number, sticking: StickingChoice = {}): number {
  return gasUptake(gas, sticking) / atomsInFilm(rate, density);
}

/** How a shot goes in time: samples in order, linear between them. */
export interface Pace {
  /** [samples] s, rising from 0 */
  readonly time: Float64Array;
  /** [samples] evaporation, in any unit: only its shape counts */
  readonly evaporation: Float64Array;
  /** [samples] pressure over the pressure of the gas given, 1; left out for a steady pressure */
  readonly pressure?: Float64Array;
}

/** A shot that evaporates evenly for a time, s. */
export function steadyPace(duration: number): Pace {
  return { time: Float64Array.of(0, duration), evaporation: Float64Array.of(1, 1) };
}

/** Integral of linear pieces. */
function integral(time: Float64Array, values: Float64Array): number {
  let sum = 0;
  for (let i = 0; i + 1 < time.length; i++) sum += ((time[i + 1]! - time[i]!) * (values[i]! + values[i + 1]!)) / 2;
  return sum;
}

export interface ContaminationOverShot {
  /** [samples] arrival ratio of the moment at a place of the given thickness; Infinity while nothing evaporates */
  readonly ratio: Float64Array;
  /** all that stuck over all that arrived, 1: the number to judge the film by */
  readonly mean: number;
  /** [samples] molecules taken up so far, 1/m² */
  readonly uptake: Float64Array;
}

/**
 * The arrival ratio through a shot at a place that ends with a thickness.
 *
 * @param thickness [m]
 */
export function contaminationOverShot(
  gas: GasState,
  thickness: number,
  density: number,
  { time, evaporation, pressure }: Pace,
  sticking: StickingChoice = {},
): ContaminationOverShot {
  const whole = integral(time, evaporation);
  const atoms = atomsInFilm(thickness, density);
  const full = gasUptake(gas, sticking);
  const taking = Float64Array.from(time, (_, i) => full * (pressure?.[i] ?? 1));
  const uptake = new Float64Array(time.length);
  for (let i = 1; i < time.length; i++)
    uptake[i] = uptake[i - 1]! + ((time[i]! - time[i - 1]!) * (taking[i]! + taking[i - 1]!)) / 2;
  return {
    ratio: taking.map((value, i) => (evaporation[i]! > 0 ? (value * whole) / (atoms * evaporation[i]!) : Infinity)),
    mean: (uptake.at(-1) ?? 0) / atoms,
    uptake,
  };
}

/**
 * The arrival ratio at each point of a map, over the whole shot: thin places take in as much gas as thick ones,
 * and more for each atom.
 *
 * @param thickness [points] m
 * @returns [points] 1; Infinity where there is no film
 */
export function contaminationMap(
  gas: GasState,
  thickness: Float64Array,
  density: number,
  pace: Pace,
  sticking: StickingChoice = {},
): Float64Array {
  const { uptake } = contaminationOverShot(gas, 1, density, pace, sticking);
  const perArea = uptake.at(-1) ?? 0;
  return thickness.map((value) => perArea / atomsInFilm(value, density));
}

/** Gas that fresh film takes out of the tank. */
export interface Gettered {
  /** molecules over the shot, 1 */
  readonly molecules: number;
  /** the same as a quantity of gas at its own temperature, Pa·m³ */
  readonly quantity: number;
  /** m³/s that the film pumps at most */
  readonly speed: number;
}

/**
 * Gas gettered by the fresh film on mirror, walls and whatever else the vapour coats.
 *
 *     S = Σ x s A v̄/4;  an upper bound: it takes the pressure as given everywhere on the film
 *
 * @param area [m²] of fresh film
 */
export function gettered(gas: GasState, area: number, pace: Pace, sticking: StickingChoice = {}): Gettered {
  const { uptake } = contaminationOverShot(gas, 1, 1, pace, sticking);
  const molecules = (uptake.at(-1) ?? 0) * area;
  const density = gas.pressure / (BOLTZMANN * gas.temperature);
  return {
    molecules,
    quantity: molecules * BOLTZMANN * gas.temperature,
    speed: density > 0 ? (gasUptake(gas, sticking) * area) / density : 0,
  };
}

/** What an arrival ratio means for a reflecting film. */
export interface ContaminationBand {
  readonly name: 'clean' | 'slight' | 'doubtful';
  /** largest ratio that still belongs here */
  readonly upTo: number;
  readonly meaning: string;
  readonly source: string;
}

const HASS =
  'after G. Hass, Physics of Thin Films 2 (1964), and L. Holland, Vacuum Deposition of Thin Films (1956), both from memory';

export const CONTAMINATION_BANDS: readonly ContaminationBand[] = [
  {
    name: 'clean',
    upTo: 0.01,
    meaning: 'The reflectance is that of good aluminium from the near ultraviolet on.',
    source: `${HASS}; the limit is common practice, no source`,
  },
  {
    name: 'slight',
    upTo: 0.05,
    meaning: 'The visible loses at most half a percent; the ultraviolet loses first.',
    source: HASS,
  },
  {
    name: 'doubtful',
    upTo: Infinity,
    meaning: 'Grains stay small, the film takes in oxide and its reflectance can’t be told beforehand.',
    source: `${HASS}; no published table of reflectance against pressure and rate was found`,
  },
];

/** The band of an arrival ratio. */
export function contaminationBand(ratio: number): ContaminationBand {
  return CONTAMINATION_BANDS.find(({ upTo }) => ratio <= upTo) ?? CONTAMINATION_BANDS.at(-1)!;
}

/** What practice recommends, whatever the arrival ratio says. */
export const RECOMMENDED = {
  /** Pa: 1e-5 Torr */
  pressure: 1.333224e-3,
  /** m/s, for the visible and for the ultraviolet */
  rate: 5e-9,
  fastRate: 20e-9,
  source: HASS,
} as const;

/** The highest pressure of a gas at which a film of a rate stays within an arrival ratio, Pa. */
export function greatestPressure(
  gas: GasState,
  rate: number,
  density: number,
  ratio: number,
  sticking: StickingChoice = {},
): number {
  const perPascal = arrivalRatio({ ...gas, pressure: 1 }, rate, density, sticking);
  return ratio / perPascal;
}

/** The slowest growth at which a film in a gas stays within an arrival ratio, m/s. */
export function leastRate(gas: GasState, density: number, ratio: number, sticking: StickingChoice = {}): number {
  return gasUptake(gas, sticking) / (ratio * atomsInFilm(1, density));
}

/** Of a pressure that was recommended and taken. */
const ROUNDING = 1e-9;

export interface Recommendation {
  /** Pa: the lower of what practice asks and what the ratio asks */
  readonly pressure: number;
  /** m/s: the higher of the two */
  readonly rate: number;
  /** whether the shot as planned keeps to both */
  readonly isKept: boolean;
}

/**
 * Pressure and rate to go for: practice's limits, tightened where the arrival ratio asks for more.
 *
 * @param rate [m/s] planned growth at the thinnest place that matters
 * @param ratio [1] arrival ratio not to exceed
 */
export function recommend(
  gas: GasState,
  rate: number,
  density: number,
  ratio = CONTAMINATION_BANDS[0]!.upTo,
  sticking: StickingChoice = {},
): Recommendation {
  const pressure = Math.min(RECOMMENDED.pressure, greatestPressure(gas, rate, density, ratio, sticking));
  const least = Math.max(RECOMMENDED.rate, leastRate(gas, density, ratio, sticking));
  const isClean = arrivalRatio(gas, rate, density, sticking) <= ratio * (1 + ROUNDING);
  return { pressure, rate: least, isKept: isClean && gas.pressure <= RECOMMENDED.pressure && rate >= RECOMMENDED.rate };
}
