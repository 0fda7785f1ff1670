/** The glow discharge that cleans the glass: dose, energy, and whether it can burn as meant. */
import { GASES } from '../gas/gases.ts';
import type { PumpingDesign } from '../design/designSchema.ts';
import { airViscosity, meanSpeedOf } from './species.ts';
import { viscosityPath } from './conductance.ts';
import { digits, MBAR_WORDS, timeWords, type VacuumWords } from './words.ts';

type GlowGas = NonNullable<PumpingDesign['glow']>['gas'];

export interface GlowSettings {
  /** Pa */
  readonly pressure: number;
  readonly gas: GlowGas;
  /** V */
  readonly voltage: number;
  /** A */
  readonly current: number;
  /** m² that the discharge covers */
  readonly area: number;
  /** s */
  readonly duration: number;
  /** m from the electrode to what is nearest it */
  readonly clearance?: number | undefined;
}

/** C, exact. @see SI Brochure, 9th edition (BIPM 2019) */
const ELEMENTARY_CHARGE = 1.602176634e-19;

/** Usual settings. @see L. Holland (1956), J. Strong (1938), D. M. Mattox; ranges, from memory */
export const GLOW_WINDOW = {
  /** Pa: 25 to 100 mTorr */
  pressure: [3, 15],
  /** V */
  voltage: [1e3, 5e3],
  /** s; about a quarter of an hour is common practice */
  duration: [300, 1800],
} as const;

/** Pressure times thickness of the normal cathode fall on aluminium, Pa·m. @see A. von Engel; J. D. Cobine, ±20 %, from memory */
const FALL: Readonly<Record<GlowGas, number>> = { air: 0.25 * 1.333224, O2: 0.25 * 1.333224, Ar: 0.29 * 1.333224 };

/** From here on, X-rays come out of windows and thin walls. From memory, 5 to 10 kV. */
const X_RAYS_ABOVE = 5e3;

export interface GlowFinding {
  readonly tone: 'good' | 'watch' | 'bad';
  readonly text: string;
}

export interface GlowDose {
  /** A/m² */
  readonly currentDensity: number;
  /** ions per m²: the charge over the area; electrons set free by the ions make the true number some percent less */
  readonly ions: number;
  /** J/m², all of the voltage counted: an upper bound, for most of it is lost in collisions */
  readonly energy: number;
  /** W */
  readonly power: number;
  /** m, normal cathode fall in this gas */
  readonly fallThickness: number;
  /** m */
  readonly freePath: number;
  readonly findings: readonly GlowFinding[];
}

function rangeFinding(
  name: string,
  value: number,
  [low, high]: readonly [number, number],
  say: (v: number) => string,
): GlowFinding {
  if (value >= low && value <= high)
    return { tone: 'good', text: `${name} ${say(value)} is within the usual ${say(low)} to ${say(high)}.` };
  const side = value < low ? 'below' : 'above';
  return { tone: 'watch', text: `${name} ${say(value)} is ${side} the usual ${say(low)} to ${say(high)}.` };
}

const kilovolts = (volts: number): string => `${Number((volts / 1e3).toPrecision(3))} kV`;
const centimetres = (metres: number): string => `${digits(100 * metres)} cm`;

function findingsOf(
  { pressure, voltage, duration, clearance }: GlowSettings,
  fall: number,
  words: VacuumWords,
): GlowFinding[] {
  const findings = [
    rangeFinding('The pressure of', pressure, GLOW_WINDOW.pressure, words.pressure),
    rangeFinding('The voltage of', voltage, GLOW_WINDOW.voltage, kilovolts),
    rangeFinding('Burning for', duration, GLOW_WINDOW.duration, timeWords),
  ];
  if (clearance !== undefined)
    findings.push(
      clearance < fall
        ? {
            tone: 'bad',
            text: `The dark space at the electrode is ${centimetres(fall)} thick, more than the ${centimetres(clearance)} that it has: it will not burn there, or will strike elsewhere. Raise the pressure or move the electrode.`,
          }
        : {
            tone: 'good',
            text: `The dark space of ${centimetres(fall)} fits within the ${centimetres(clearance)} around the electrode.`,
          },
    );
  if (voltage >= X_RAYS_ABOVE)
    findings.push({
      tone: 'bad',
      text: `At ${kilovolts(voltage)} X-rays must be expected: have the radiation measured and shielded by those licensed to.`,
    });
  return findings;
}

/**
 * What a glow discharge does to a surface.
 *
 *     ions = I t/(e A),  energy ≤ U I t/A,  cathode fall d = (p d)/p
 *
 * 1 mA·s/cm² is 6.2415e15 singly charged ions per cm².
 *
 * @throws RangeError if a setting is not above zero
 */
export function glowDose(settings: GlowSettings, temperature = 293.15, words: VacuumWords = MBAR_WORDS): GlowDose {
  const { pressure, gas, voltage, current, area, duration, clearance } = settings;
  for (const [name, value] of Object.entries({ pressure, voltage, current, area, duration, clearance: clearance ?? 1 }))
    if (!(value > 0 && value < Infinity)) throw new RangeError(`${name}: expected a value above zero; found ${value}`);
  const currentDensity = current / area;
  const fallThickness = FALL[gas] / pressure;
  return {
    currentDensity,
    ions: (currentDensity * duration) / ELEMENTARY_CHARGE,
    energy: voltage * currentDensity * duration,
    power: voltage * current,
    fallThickness,
    freePath: viscosityPath(pressure, airViscosity(temperature), meanSpeedOf(GASES.air.molarMass, temperature)),
    findings: findingsOf(settings, fallThickness, words),
  };
}

/** The usual cautions of a glow discharge. They advise; local codes and licensed practice decide. */
export const GLOW_CAUTIONS: readonly string[] = [
  'The supply is at kilovolts and can kill. Only those licensed for it work on it, behind interlocked doors and covers; lock out, bleed and earth it before anyone touches the electrode (see IEC 61010-1, EN 50191, NFPA 70E and your local code).',
  'Capacitors and long cables keep their charge after switching off. Prove them dead and hang the earth stick before going near.',
  'Above some 5 kV X-rays come out of windows and thin walls: measure, shield, keep people away.',
  'In air or oxygen the discharge makes ozone and nitrogen oxides. Vent the pumps outdoors.',
  'Rich oxygen and mineral pump oil can explode. Pump oxygen only with pumps and oil made for it.',
  'Keep the discharge off with the tank open, and the tank closed while it is hot: filaments, electrode and shields stay hot after it.',
];
