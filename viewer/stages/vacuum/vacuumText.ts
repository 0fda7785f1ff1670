/** Quantities of vacuum as the page writes them: over many decades, in the user's units. */
import { inUnit, type Plant } from '../../../engine/index.ts';
import { timeWords, type VacuumWords } from '../../../engine/vacuum/words.ts';
import { fileNameOf } from '../../format/fileName.ts';
import { scientific } from '../../format/scientific.ts';
import type { Units } from '../../state/units.ts';

const LITRES = 1e3;

/** A pressure, Pa, in the user's unit: "1.2·10⁻⁵ mbar". */
export function pressureText(units: Units, pascals: number, digits = 2): string {
  return `${scientific(inUnit(pascals, 'pressure', units.pressure), digits)} ${units.pressure}`;
}

/** A gas flow, Pa·m³/s, in the user's unit of pressure times litres per second, and what that unit is called. */
export const shownFlow = (units: Units, flow: number): number => inUnit(flow, 'pressure', units.pressure) * LITRES;
export const flowUnit = (units: Units): string => `${units.pressure} l/s`;

/** How the engine's sentences about the vacuum say numbers here. */
export function vacuumWords(units: Units): VacuumWords {
  return {
    pressure: (pascals) => pressureText(units, pascals),
    flow: (flow) => `${scientific(shownFlow(units, flow), 2)} ${flowUnit(units)}`,
    speed: (speed) => `${scientific(speed * LITRES, 2)} l/s`,
  };
}

/** A length, m, in the user's unit, however long: "660 m". */
export function pathText(units: Units, metres: number, digits = 3): string {
  return `${scientific(inUnit(metres, 'length', units.length), digits)} ${units.length}`;
}

/** A time: "3.5·10⁻⁴ s", "41 s", "12 min", "3 h 20 min". */
export function durationText(seconds: number): string {
  return seconds < 1 ? `${scientific(seconds, 2)} s` : timeWords(seconds);
}

/** Decimals of a share at most. */
const MOST_DECIMALS = 5;

/** A share with the digits that tell it from none and from all: "99.95 %", "3.1 %", "4·10⁻⁵ %". */
export function shareText(share: number): string {
  const inPercent = 100 * share;
  if (inPercent <= 99 || inPercent >= 100) return `${scientific(inPercent, 2)} %`;
  const decimals = Math.max(1, Math.ceil(-Math.log10(100 - inPercent)) + 1);
  return decimals > MOST_DECIMALS ? 'over 99.999 %' : `${Number(inPercent.toFixed(decimals))} %`;
}

/** The plant's name as the beginning of file names. */
export const fileStem = ({ name }: Plant): string => fileNameOf(name).replace('.json', '');
