/** Free paths and unscattered vapour against pressure, as chart data in the user's units. */
import { atomFreePath, DEFAULT_VAPOUR, firstFlightSurvival, gasFreePath } from '../../../../engine/gas/freePath.ts';
import type { GasState } from '../../../../engine/gas/gases.ts';
import { meanVapourSpeed } from '../../../../engine/gas/gasReport.ts';
import { inUnit, type Plant } from '../../../../engine/index.ts';
import type { LogChartData } from '../../../charts/log/logChartTypes.ts';
import type { Units } from '../../../state/units.ts';
import { pressureAxis } from '../pressureAxis.ts';
import type { GasCase } from './gasCase.ts';
import { residualGas } from './residualGas.ts';

/** Free paths of gas and vapour, with the throw as the length to compare. */
export function freePathChart({ vacuum }: Plant, { report }: GasCase, units: Units): LogChartData {
  const { axis, pressures, x, mark } = pressureAxis(vacuum.pressure, units);
  const inLength = (metres: number): number => inUnit(metres, 'length', units.length);
  const at = (path: (gas: GasState) => number): Float64Array =>
    pressures.map((pressure) => inLength(path(residualGas(vacuum, pressure))));
  const speed = meanVapourSpeed(DEFAULT_VAPOUR);
  return {
    xAxis: axis,
    yAxis: { label: 'Mean free path', unit: units.length },
    series: [
      { label: 'aluminium vapour', x, y: at((gas) => atomFreePath(gas, speed)) },
      { label: 'gas', x, y: at(gasFreePath) },
    ],
    thresholds: [mark, { axis: 'y', value: inLength(report.throw.mean), label: 'filaments to mirror' }],
  };
}

/** Share of the vapour that flies straight, over the mean throw. */
export function survivalChart({ vacuum }: Plant, { report }: GasCase, units: Units): LogChartData {
  const { axis, pressures, x, mark } = pressureAxis(vacuum.pressure, units);
  const y = pressures.map((pressure) => 100 * firstFlightSurvival(residualGas(vacuum, pressure), report.throw.mean));
  return {
    xAxis: axis,
    yAxis: { label: 'Flies straight', unit: '%', scale: 'linear', range: [0, 105] },
    series: [{ label: 'over the mean throw', x, y }],
    thresholds: [mark],
  };
}
