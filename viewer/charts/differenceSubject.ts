/** What the map of a difference shows. */
import type { Coat } from '../../engine/index.ts';
import type { KeyPlace, MapSubject } from '../../workers/picture/mapSubject.ts';
import { extentOf, symmetricScale } from '../../workers/picture/valueScale.ts';
import { fixed } from '../format/numbers.ts';
import type { Units } from '../state/units.ts';
import type { Difference } from './difference.ts';
import { lengthUnit, shownText, thicknessUnit } from './shownUnits.ts';

/** Share of the mean thickness that the colours span at least. */
const LEAST_SPAN = 0.002;

/** A difference with its sign. */
export function signedText(value: number, units: Units, decimals = 1): string {
  const text = shownText(value, thicknessUnit(units), decimals);
  return value > 0 && Number(fixed(value, decimals)) !== 0 ? `+${text}` : text;
}

export function differenceSubject(
  { plant, face, statistics }: Coat,
  difference: Difference & { ok: true },
  label: string,
  units: Units,
): MapSubject {
  const { values, thicker } = difference;
  const [low, high] = extentOf(values);
  const placeOf = (value: number, sign: KeyPlace['sign']): KeyPlace => {
    const i = values.indexOf(value);
    const { position } = face.points;
    return { x: position[3 * i]!, y: position[3 * i + 1]!, sign, text: signedText(value, units) };
  };
  return {
    plant,
    face,
    label,
    values,
    thickness: thicker,
    scale: symmetricScale([low, high], LEAST_SPAN * 1e9 * statistics.mean.value || 1),
    palette: 'twoSided',
    keyLevels: [{ value: 0, text: '0', isDashed: false, isFragile: true }],
    keyPlaces: high > low ? [placeOf(low, '▼'), placeOf(high, '▲')] : [],
    barMarks: [],
    unit: thicknessUnit(units),
    lengthUnit: lengthUnit(units),
  };
}
