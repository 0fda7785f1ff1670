/** The mapped quantity as numbers at the points of a coat, in the unit that is shown. */
import type { Coat } from '../../engine/index.ts';
import type { MappedQuantity } from '../state/mapView.ts';

export interface MapField {
  /** [points] in `unit`; NaN where nothing arrives */
  readonly values: Float64Array;
  readonly label: string;
  readonly unit: string;
}

const DEGREES = 180 / Math.PI;

/** The field of a quantity, or null if the coat was computed without it (arrival angles are computed on demand). */
export function mapFieldOf({ thickness, arrival, plant }: Coat, quantity: MappedQuantity): MapField | null {
  switch (quantity) {
    case 'thickness':
      return { values: thickness.map((value) => value * 1e9), label: 'Thickness', unit: 'nm' };
    case 'deviation':
      return {
        values: thickness.map((value) => 100 * (value / plant.film.target - 1)),
        label: 'Deviation from target',
        unit: '%',
      };
    case 'incidence':
      return (
        arrival && {
          values: arrival.meanAngle.map((value) => value * DEGREES),
          label: 'Mean incidence angle',
          unit: '°',
        }
      );
    case 'grazing':
      return (
        arrival && {
          values: arrival.grazingShare.map((value) => 100 * value),
          label: 'Share arriving beyond 60°',
          unit: '%',
        }
      );
  }
}
