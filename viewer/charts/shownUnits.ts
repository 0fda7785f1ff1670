/** The user's units as factors for drawings that compute in nanometres and metres. */
import { inUnit } from '../../engine/index.ts';
import type { ShownUnit } from '../../workers/picture/mapSubject.ts';
import { fixed } from '../format/numbers.ts';
import type { Units } from '../state/units.ts';

/** Rounding of a factor: one ångström is a tenth of a nanometre, not 0.1 − 10⁻¹⁷. */
const rounded = (value: number): number => Number(value.toPrecision(12));

export function thicknessUnit({ thickness }: Units): ShownUnit {
  return { unit: thickness, factor: rounded(inUnit(1e-9, 'length', thickness)) };
}

export function lengthUnit({ length }: Units): ShownUnit {
  return { unit: length, factor: rounded(inUnit(1, 'length', length)) };
}

/** The unit that a field's values are shown in: nanometres become the user's unit of thickness. */
export function fieldUnit(unit: string, units: Units): ShownUnit {
  return unit === 'nm' ? thicknessUnit(units) : { unit, factor: 1 };
}

/** Decimals in a unit that are worth so many in the unit of the drawing: an ångström has one less than a nanometre. */
export function shownDecimals({ factor }: ShownUnit, decimals: number): number {
  return Math.max(0, decimals - Math.max(0, Math.round(Math.log10(factor))));
}

/** Decimals of a length that tell about a millimetre. */
export function lengthDecimals({ factor }: ShownUnit): number {
  return Math.max(0, 3 - Math.max(0, Math.ceil(Math.log10(factor))));
}

/** A value with its unit, with about as many decimals in any unit: "96.3 nm", "963 Å". */
export function shownText(value: number, shown: ShownUnit, decimals = 1): string {
  const space = shown.unit === '°' ? '' : ' ';
  return `${fixed(value * shown.factor, shownDecimals(shown, decimals))}${space}${shown.unit}`;
}

/** A length of the plant, m, to about a millimetre: "1.250 m", "49.2 in". */
export function shownLength(value: number, shown: ShownUnit): string {
  return `${fixed(value * shown.factor, lengthDecimals(shown))} ${shown.unit}`;
}

/** A place on the mirror, "r 0.275 m, 325°". */
export function shownPlace(x: number, y: number, length: ShownUnit): string {
  const angle = Math.round((Math.atan2(y, x) * 180) / Math.PI + 360) % 360;
  return `r ${shownLength(Math.hypot(x, y), length)}, ${angle}°`;
}
