/** The map of a coat: what it shows beside the values. */
import type { Coat } from '../../engine/index.ts';
import type { KeyLevel, MapSubject, ShownUnit } from './mapSubject.ts';
import type { ValueScale } from './valueScale.ts';

/** A field over the points of a coat. */
export interface CoatField {
  readonly values: Float64Array;
  readonly label: string;
  readonly unit: string;
}

export const NANOMETRES: ShownUnit = { unit: 'nm', factor: 1 };
export const METRES: ShownUnit = { unit: 'm', factor: 1 };

/** How the field's value follows from the thickness, m; null if it does not. */
type ValueOf = ((thickness: number) => number) | null;

const NM = 1e9;
export const thicknessValue = (thickness: number): number => NM * thickness;

/** A share without needless digits, "10 %". */
const percent = (share: number): string => `${Number((100 * share).toPrecision(4))} %`;

/** Tolerance limits about the mean, as values of the field. */
function limitsOf({ plant, statistics }: Coat, valueOf: ValueOf): KeyLevel[] {
  const { tolerance } = plant.film;
  const mean = statistics.mean.value;
  if (!valueOf || !(mean > 0)) return [];
  return [
    { value: valueOf(mean * (1 - tolerance)), text: `\u2212${percent(tolerance)}`, isDashed: false },
    { value: valueOf(mean * (1 + tolerance)), text: `+${percent(tolerance)}`, isDashed: true },
  ];
}

export interface CoatMapOptions {
  readonly scale: ValueScale;
  readonly valueOf: ValueOf;
  /** of the field's values, as shown */
  readonly unit: ShownUnit;
  /** of thickness in nanometres, as shown */
  readonly thicknessUnit: ShownUnit;
  readonly lengthUnit: ShownUnit;
}

/** The map of a field of a coat, with tolerance limits, thinnest and thickest place. */
export function coatMap(coat: Coat, field: CoatField, options: CoatMapOptions): MapSubject {
  const { plant, face, thickness, statistics } = coat;
  const { mean, minimum, maximum } = statistics;
  const { scale, valueOf, unit, thicknessUnit, lengthUnit } = options;
  const keyLevels = limitsOf(coat, valueOf);
  const shown = (value: number): string =>
    `${(value * NM * thicknessUnit.factor).toFixed(thicknessUnit.factor >= 10 ? 0 : 1)} ${thicknessUnit.unit}`;
  const [lower, upper] = keyLevels;
  return {
    plant,
    face,
    label: field.label,
    values: field.values,
    thickness,
    scale,
    palette: 'even',
    keyLevels,
    keyPlaces:
      maximum.value > 0
        ? [
            { x: minimum.position[0], y: minimum.position[1], sign: '▼', text: `thinnest ${shown(minimum.value)}` },
            { x: maximum.position[0], y: maximum.position[1], sign: '▲', text: `thickest ${shown(maximum.value)}` },
          ]
        : [],
    barMarks: lower && upper && valueOf ? [upper, { value: valueOf(mean.value), text: 'mean' }, lower] : [],
    unit,
    lengthUnit,
  };
}
