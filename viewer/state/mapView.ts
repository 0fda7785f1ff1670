/** Which quantity the maps show, and over which range of colours. */
import { create } from 'zustand';

/** `deviation` is from the target. */
export type MappedQuantity = 'thickness' | 'deviation' | 'incidence' | 'grazing';

/** Colours over the values at hand, over a chosen range, or over the same range for all variants. */
export type ColorRange =
  | { readonly mode: 'automatic' }
  | { readonly mode: 'shared' }
  | { readonly mode: 'fixed'; readonly low: number; readonly high: number };

export interface MapView {
  readonly quantity: MappedQuantity;
  readonly range: ColorRange;
  /** whether the colours of a thickness begin at zero, unless their range is fixed */
  readonly fromZero: boolean;
}

export const useMapView = create<MapView>(() => ({
  quantity: 'thickness',
  range: { mode: 'automatic' },
  fromZero: false,
}));

/** Chooses the mapped quantity; a fixed range belonged to the old one and becomes automatic. */
export function showQuantity(quantity: MappedQuantity): void {
  const { range } = useMapView.getState();
  useMapView.setState({ quantity, range: range.mode === 'fixed' ? { mode: 'automatic' } : range });
}

/** Chooses the range of colours, in the unit of the quantity's field. */
export function setColorRange(range: ColorRange): void {
  useMapView.setState({ range });
}

/** Lets the colours of a thickness begin at zero, or at its least value. */
export function startAtZero(fromZero: boolean): void {
  useMapView.setState({ fromZero });
}
