/** Reads one end of a fixed range of colours. */
import { parseQuantity } from '../../engine/index.ts';
import type { ShownUnit } from '../../workers/picture/mapSubject.ts';

/** What a text in degrees or percent means in the units of the engine, per unit of the field. */
const OTHERS = {
  '%': { dimension: 'fraction', perUnit: 0.01 },
  '°': { dimension: 'angle', perUnit: Math.PI / 180 },
} as const;

/**
 * The number that a text means in a field's unit, or the sentence that says why it means none. A
 * number alone is taken in the unit that is shown.
 *
 * @param unit of the field: nm, % or °
 */
export function readRangeEnd(text: string, unit: string, shown: ShownUnit): number | string {
  const withUnit = /^[+\-\u2212]?[\d.,]+(?:e[+-]?\d+)?$/i.test(text) ? `${text} ${shown.unit}` : text;
  const plain = withUnit.replace('\u2212', '-').replace('°', 'deg');
  const other = unit === '%' || unit === '°' ? OTHERS[unit] : null;
  const parsed = parseQuantity(plain, other ? other.dimension : 'length');
  if (!parsed.ok) return parsed.message;
  return Number((parsed.value / (other ? other.perUnit : 1e-9)).toPrecision(12));
}
