/** What the flat map of a coat shows, from the chosen quantity, range and units. */
import type { Coat, ProbeReading } from '../../engine/index.ts';
import { coatMap, thicknessValue } from '../../workers/picture/coatMap.ts';
import type { MapSubject } from '../../workers/picture/mapSubject.ts';
import { extentOf } from '../../workers/picture/valueScale.ts';
import { mapFieldOf } from '../format/mapField.ts';
import { scaleOf, type SharedRange } from '../format/mapScale.ts';
import type { MappedQuantity, MapView } from '../state/mapView.ts';
import type { Units } from '../state/units.ts';
import { fieldUnit, lengthUnit, thicknessUnit } from './shownUnits.ts';

/** The range that several coats share for a quantity; undefined if one of them lacks it. */
export function sharedRangeOf(coats: readonly Coat[], quantity: MappedQuantity): SharedRange | undefined {
  const fields = coats.map((coat) => mapFieldOf(coat, quantity));
  const extents = fields.flatMap((field) => (field ? [extentOf(field.values)] : []));
  if (extents.length < coats.length || extents.length === 0) return undefined;
  return [Math.min(...extents.map(([low]) => low)), Math.max(...extents.map(([, high]) => high))];
}

/** How a thickness, m, becomes a value of the quantity; null if it does not. */
function valueOfThickness({ plant }: Coat, quantity: MappedQuantity): ((thickness: number) => number) | null {
  if (quantity === 'thickness') return thicknessValue;
  return quantity === 'deviation' ? (thickness) => 100 * (thickness / plant.film.target - 1) : null;
}

/** The subject, or null if the coat was computed without the quantity. */
export function mapSubjectOf(coat: Coat, view: MapView, units: Units, sharedRange?: SharedRange): MapSubject | null {
  const field = mapFieldOf(coat, view.quantity);
  if (!field) return null;
  return coatMap(coat, field, {
    scale: scaleOf(field.values, view, sharedRange),
    valueOf: valueOfThickness(coat, view.quantity),
    unit: fieldUnit(field.unit, units),
    thicknessUnit: thicknessUnit(units),
    lengthUnit: lengthUnit(units),
  });
}

/** What the probe reads of a quantity, in the unit of its field; NaN where nothing arrives. */
export function probedValue(coat: Coat, quantity: MappedQuantity, reading: ProbeReading): number {
  if (quantity === 'incidence') return (reading.meanArrival * 180) / Math.PI;
  if (quantity === 'grazing') return 100 * reading.grazingShare;
  return valueOfThickness(coat, quantity)?.(reading.thickness) ?? NaN;
}
