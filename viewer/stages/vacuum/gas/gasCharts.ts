/** Free paths and unscattered vapour against pressure, as chart data in the user's units. */
import { inUnit, type Plant } from '../../../../engine/index.ts';
import { firstFlightSurvival, gasFreePath, perFreePath } from '../../../../engine/gas/freePath.ts';
import { logSpaced } from '../../../../engine/gas/pressureSweep.ts';
import type { LogChartData } from '../../../charts/log/logChartTypes.ts';
import type { Units } from '../../../state/units.ts';
import type { GasReport } from './gasReport.ts';
import { residualGas } from './residualGas.ts';

/** Pressures shown, Pa: 1e-7 to 1 mbar. */
export const SHOWN_PRESSURES = [1e-5, 100] as const;
const POINTS = 57;

/** The shown range, widened to whole decades so that a pressure lies in it. */
export function shownPressures(pressure: number): readonly [low: number, high: number] {
  const [low, high] = SHOWN_PRESSURES;
  return [Math.min(low, 10 ** Math.floor(Math.log10(pressure))), Math.max(high, 10 ** Math.ceil(Math.log10(pressure)))];
}

const inPressure = (units: Units, pascals: number): number => inUnit(pascals, 'pressure', units.pressure);
const inLength = (units: Units, metres: number): number => inUnit(metres, 'length', units.length);

/** The axis of pressure, and the pressures along it, Pa. */
function pressureAxis(pressure: number, units: Units) {
  const [low, high] = shownPressures(pressure);
  return {
    pressures: logSpaced(low, high, POINTS),
    axis: {
      label: 'Pressure',
      unit: units.pressure,
      range: [inPressure(units, low), inPressure(units, high)],
    },
  } as const;
}

/** Free paths of gas and vapour, with the throw and the tank as lengths to compare. */
export function freePathChart({ vacuum }: Plant, report: GasReport, units: Units): LogChartData {
  const { pressures, axis } = pressureAxis(vacuum.pressure, units);
  const x = pressures.map((pressure) => inPressure(units, pressure));
  const at = (path: (gas: GasReport['gas']) => number): Float64Array =>
    pressures.map((pressure) => inLength(units, path(residualGas(vacuum, pressure))));
  return {
    xAxis: axis,
    yAxis: { label: 'Mean free path', unit: units.length },
    series: [
      { label: 'aluminium vapour', x, y: at((gas) => 1 / perFreePath(gas)) },
      { label: 'gas', x, y: at(gasFreePath) },
    ],
    thresholds: [
      { axis: 'x', value: inPressure(units, vacuum.pressure), label: 'this shot' },
      ...(report.throwLength > 0
        ? [{ axis: 'y', value: inLength(units, report.throwLength), label: 'filaments to mirror' } as const]
        : []),
    ],
  };
}

/** Share of the vapour that flies straight, over the mean throw. */
export function survivalChart({ vacuum }: Plant, report: GasReport, units: Units): LogChartData {
  const { pressures, axis } = pressureAxis(vacuum.pressure, units);
  return {
    xAxis: axis,
    yAxis: { label: 'Vapour that meets no molecule', unit: '%', scale: 'linear', range: [0, 105] },
    series: [
      {
        label: 'over the mean throw',
        x: pressures.map((pressure) => inPressure(units, pressure)),
        y: pressures.map((pressure) => 100 * firstFlightSurvival(residualGas(vacuum, pressure), report.throwLength)),
      },
    ],
    thresholds: [{ axis: 'x', value: inPressure(units, vacuum.pressure), label: 'this shot' }],
  };
}
