/** How a quantity of the file is shown: in the user's unit, or as typed where that is the user's unit. */
import { formatQuantity, parseQuantity, type DimensionName } from '../../../../engine/index.ts';
import { UNIT_CHOICES, type UnitKind, type Units } from '../../../state/units.ts';

/** Places whose length is the thickness of a film. */
const THIN = new Set(['film.target', 'film.oxide', 'film.overcoat.thickness', 'film.wavelength', 'film.roughness']);
/** Smaller units for what would begin with zeros. */
const FINER: Readonly<Record<string, string>> = { m: 'mm', ft: 'in' };
/** Shorter than this, in the user's unit, a length is shown in the finer one. */
const SMALL = 0.1;
/** Digits shown of a converted value. */
const DIGITS = 6;

/** The unit kind of a field; null for dimensions that have no choice of units. */
function unitKindOf(dimension: DimensionName, place: string): UnitKind | null {
  if (dimension === 'length' && THIN.has(place)) return 'thickness';
  return dimension in UNIT_CHOICES ? (dimension as UnitKind) : null;
}

/** The text that stands in a field for a quantity of the file. */
export function shownText(text: string, dimension: DimensionName, place: string, units: Units): string {
  const kind = unitKindOf(dimension, place);
  const parsed = parseQuantity(text, dimension);
  if (kind === null || !parsed.ok) return text;
  return shownValue(parsed.value, dimension, place, units, text, parsed.unit);
}

/** An SI value in the user's unit; in the text that it was typed as, if that has the unit already. */
export function shownValue(
  value: number,
  dimension: DimensionName,
  place: string,
  units: Units,
  typed = '',
  typedUnit = '',
): string {
  const kind = unitKindOf(dimension, place);
  if (kind === null) return typed;
  const unit = units[kind];
  if (typedUnit === unit) return typed;
  const finer = FINER[unit];
  const isSmall = value !== 0 && Math.abs(value) < SMALL * factorOf(dimension, unit);
  const shown = kind === 'length' && finer !== undefined && isSmall ? finer : unit;
  return shown === typedUnit ? typed : formatQuantity(value, dimension, shown, DIGITS);
}

function factorOf(dimension: DimensionName, unit: string): number {
  const parsed = parseQuantity(`1 ${unit}`, dimension);
  return parsed.ok ? parsed.value : 1;
}
