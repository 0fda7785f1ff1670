/** Quantities of vacuum as the page writes them: over many decades, in the user's units. */
import { inUnit } from '../../../engine/index.ts';
import { scientific } from '../../format/scientific.ts';
import type { Units } from '../../state/units.ts';

/** A pressure, Pa, in the user's unit: "1.2·10⁻⁵ mbar". */
export function pressureText(units: Units, pascals: number, digits = 2): string {
  return `${scientific(inUnit(pascals, 'pressure', units.pressure), digits)} ${units.pressure}`;
}

/** A length, m, in the user's unit, however long: "660 m"; "beyond any length" of a path that never ends. */
export function pathText(units: Units, metres: number, digits = 3): string {
  if (!Number.isFinite(metres)) return 'beyond any length';
  return `${scientific(inUnit(metres, 'length', units.length), digits)} ${units.length}`;
}

const MINUTE = 60;
const HOUR = 3600;
const DAY = 86_400;

/** Two units of time, the smaller one left out where it is none. */
function inTwo(seconds: number, large: number, largeName: string, small: number, smallName: string): string {
  const smallCount = Math.round(seconds / small);
  const whole = Math.floor((smallCount * small) / large);
  const rest = smallCount - Math.round((whole * large) / small);
  return rest === 0 ? `${whole} ${largeName}` : `${whole} ${largeName} ${rest} ${smallName}`;
}

/** A time: "0.35 s", "12 s", "4 min 10 s", "3 h 20 min", "2 d 4 h". */
export function durationText(seconds: number): string {
  if (!Number.isFinite(seconds)) return 'for ever';
  if (seconds < 10) return `${scientific(seconds, 2)} s`;
  if (Math.round(seconds) < MINUTE) return `${Math.round(seconds)} s`;
  if (Math.round(seconds) < HOUR) return inTwo(seconds, MINUTE, 'min', 1, 's');
  if (Math.round(seconds / MINUTE) * MINUTE < DAY) return inTwo(seconds, HOUR, 'h', MINUTE, 'min');
  return inTwo(seconds, DAY, 'd', HOUR, 'h');
}

/** A share with the digits that tell it from none and from all: "99.95 %", "3.1 %", "4·10⁻⁵ %". */
export function shareText(share: number): string {
  const inPercent = 100 * share;
  if (inPercent > 99 && inPercent < 100) {
    const decimals = Math.min(6, Math.max(1, Math.ceil(-Math.log10(100 - inPercent)) + 1));
    return `${inPercent.toFixed(decimals)} %`;
  }
  return `${scientific(inPercent, 2)} %`;
}
