/** Over which values the colours of a map run: the same rule for the tank, the face and exported files. */
import { exactScale, extentOf, roundScale, type ValueScale } from '../../workers/picture/valueScale.ts';
import type { MapView } from '../state/mapView.ts';

/** Lowest and highest value that all compared variants share, in the unit of the field. */
export type SharedRange = readonly [low: number, high: number];

/** Whether the colours of this view may begin at zero: only for a thickness, and not where the range is fixed. */
export function canStartAtZero({ quantity, range }: MapView): boolean {
  return quantity === 'thickness' && range.mode !== 'fixed';
}

/**
 * The scale of a field: round numbers around its values, a fixed range as it is, or the one that variants share.
 *
 * @param values of the quantity that the view names, in the unit of its field; NaN where there is none
 */
export function scaleOf(values: Float64Array, view: MapView, shared?: SharedRange): ValueScale {
  const { range } = view;
  if (range.mode === 'fixed') return exactScale(range.low, range.high);
  const [low, high] = range.mode === 'shared' && shared ? shared : extentOf(values);
  return roundScale([canStartAtZero(view) && view.fromZero ? Math.min(0, low) : low, high]);
}
