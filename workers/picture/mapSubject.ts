/** What a face-on map shows. */
import type { Face } from '../../engine/geometry/face.ts';
import type { Plant } from '../../engine/index.ts';
import type { PaletteName } from './paint.ts';
import type { ValueScale } from './valueScale.ts';

/** A unit that numbers are written in, and how many of it make one of the drawing's own. */
export interface ShownUnit {
  readonly unit: string;
  readonly factor: number;
}

/** A contour that matters more than the round ones. */
export interface KeyLevel {
  readonly value: number;
  readonly text: string;
  readonly isDashed: boolean;
  /** left out where it would only trace noise, as the line of no difference between two equal coats does */
  readonly isFragile?: boolean;
}

/** A place that is pointed out. */
export interface KeyPlace {
  /** m */
  readonly x: number;
  readonly y: number;
  readonly sign: '▼' | '▲';
  readonly text: string;
}

/** What a map shows. */
export interface MapSubject {
  readonly plant: Plant;
  readonly face: Face;
  readonly label: string;
  /** [points] NaN where there is no value */
  readonly values: Float64Array;
  /** [points] m; hatched where it is zero */
  readonly thickness: Float64Array;
  readonly scale: ValueScale;
  readonly palette: PaletteName;
  readonly keyLevels: readonly KeyLevel[];
  readonly keyPlaces: readonly KeyPlace[];
  /** named values beside the colour bar */
  readonly barMarks: readonly { readonly value: number; readonly text: string }[];
  /** of the values, as shown */
  readonly unit: ShownUnit;
  /** of metres, as shown */
  readonly lengthUnit: ShownUnit;
}

/** A value of the subject as text, without its unit. */
export function shownValue({ unit }: Pick<MapSubject, 'unit'>, value: number, decimals: number): string {
  const shown = Math.max(0, decimals - Math.max(0, Math.round(Math.log10(unit.factor))));
  const text = (value * unit.factor).toFixed(shown);
  return (/^-0(\.0*)?$/.test(text) ? text.slice(1) : text).replace('-', '\u2212');
}
