/** The axis of pressure that charts of the vacuum share. */
import { logSpaced } from '../../../engine/gas/pressureSweep.ts';
import { inUnit } from '../../../engine/index.ts';
import type { LogAxis, LogThreshold } from '../../charts/log/logChartTypes.ts';
import type { Units } from '../../state/units.ts';

/** Pressures shown in any case, Pa: 1e-7 to 1 mbar. */
const [LOWEST, HIGHEST] = [1e-5, 100];
const POINTS_PER_DECADE = 8;

export interface PressureAxis {
  readonly axis: LogAxis;
  /** Pa, evenly spaced in their logarithm */
  readonly pressures: Float64Array;
  /** the same in the user's unit */
  readonly x: Float64Array;
  /** the pressure of the shot */
  readonly mark: LogThreshold;
}

export const shownPressure = (units: Units, pascals: number): number => inUnit(pascals, 'pressure', units.pressure);

/** Pressures around that of the shot, widened to whole decades of mbar so that it lies among them. */
export function pressureAxis(pressure: number, units: Units): PressureAxis {
  const low = Math.min(LOWEST, 10 ** Math.floor(Math.log10(pressure)));
  const high = Math.max(HIGHEST, 10 ** Math.ceil(Math.log10(pressure)));
  const pressures = logSpaced(low, high, POINTS_PER_DECADE * Math.round(Math.log10(high / low)) + 1);
  return {
    pressures,
    x: pressures.map((value) => shownPressure(units, value)),
    axis: {
      label: 'Pressure',
      unit: units.pressure,
      range: [shownPressure(units, low), shownPressure(units, high)],
    },
    mark: { axis: 'x', value: shownPressure(units, pressure), label: 'this shot' },
  };
}
