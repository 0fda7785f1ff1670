/** Gas that surfaces give off: published rates and their laws of time. */
import type { OutgassingMaterial } from '../design/pumpingSchema.ts';

const HOUR = 3600;
/** One mbar·l/(s·cm²) in Pa·m/s. */
const MBAR_LITRE = 1e3;
/** Before this, vapour leaves with the air instead of piling up; keeps the law finite at t = 0. */
const EARLY = 60;

/** A rate that falls as powers of the time since pumping began: one power up to an hour, one to ten hours, one later. */
export interface OutgassingLaw {
  /** Pa·m/s (= Pa·m³/s per m²) after one hour */
  readonly atOneHour: number;
  readonly toOneHour: number;
  readonly toTenHours: number;
  readonly later: number;
}

export interface Outgassing {
  readonly law: OutgassingLaw;
  /** share of water in what comes off after a day in room air */
  readonly water: number;
  /** whether the gas comes from the bulk, so that venting for hours or days makes little difference */
  readonly isBulk: boolean;
  readonly source: string;
}

const ELSEY =
  'R. J. Elsey, Vacuum 25 (1975) 299 and 347, as tabulated by J. F. O’Hanlon (from memory, ±20 %; real surfaces differ by 3 to 10 times)';

/** A law through the published rates at one hour and at ten hours, in mbar·l/(s·cm²); power 1 at most before. */
function through(oneHour: number, early: number, tenHours: number, later: number): OutgassingLaw {
  return {
    atOneHour: oneHour * MBAR_LITRE,
    toOneHour: Math.min(early, 1),
    toTenHours: Math.log10(oneHour / tenHours),
    later,
  };
}

/** A law of one power, rate in Pa·m/s. */
export function powerLaw(atOneHour: number, exponent: number): OutgassingLaw {
  return { atOneHour, toOneHour: exponent, toTenHours: exponent, later: exponent };
}

const metal = (law: OutgassingLaw): Outgassing => ({ law, water: 0.9, isBulk: false, source: ELSEY });
const rubber = (law: OutgassingLaw): Outgassing => ({ law, water: 0.5, isBulk: true, source: ELSEY });

/**
 * Built-in materials. That nine tenths of what metals and glass give off in the first day is water, and half
 * of what rubber does, is common practice without a source.
 */
export const OUTGASSING: Readonly<Record<OutgassingMaterial, Outgassing>> = {
  'stainless steel': metal(through(1.8e-8, 0.9, 2.0e-9, 0.9)),
  'electropolished steel': metal(through(5.7e-9, 1, 5.7e-10, 1)),
  'mild steel': metal(through(7.2e-7, 1, 6.7e-8, 1)),
  'rusty steel': metal(through(8.0e-7, 3.1, 1.7e-8, 1)),
  aluminium: metal(through(8.3e-9, 1, 4.3e-10, 0.9)),
  'old coating': {
    law: powerLaw(8.3e-8 * MBAR_LITRE, 1),
    water: 0.95,
    isBulk: false,
    source: 'ten times fresh aluminium, for the pores of old deposits; common practice, no source',
  },
  glass: metal(through(9.8e-9, 1.1, 5.5e-10, 1)),
  fluoroelastomer: rubber(powerLaw(1.5e-6 * MBAR_LITRE, 0.8)),
  neoprene: rubber(powerLaw(4e-5 * MBAR_LITRE, 0.4)),
};

/**
 * Outgassing rate at a time.
 *
 *     q(t) = q₁ (t/1 h)^−α · (1 − e^(−t/60 s))^α
 *
 * with its own α up to 1 h, up to 10 h and later. The last factor is 1 within 1e-7 from a quarter of an hour on.
 *
 * @param time [s] since pumping began, ≥ 0
 * @returns [Pa·m/s]
 * @see q₁ (t/1 h)^−α: Pfeiffer Vacuum, Vacuum Technology Book, 1.3.3
 */
export function outgassingRate({ atOneHour, toOneHour, toTenHours, later }: OutgassingLaw, time: number): number {
  const hours = time / HOUR;
  if (hours <= 1) {
    // (1 − e^(−t/τ))/t tends to 1/τ at t = 0
    const inverse = time > 0 ? -Math.expm1(-time / EARLY) / time : 1 / EARLY;
    return atOneHour * (inverse * HOUR) ** toOneHour;
  }
  if (hours <= 10) return atOneHour * hours ** -toTenHours;
  return atOneHour * 10 ** -toTenHours * (hours / 10) ** -later;
}
