/** Foreign molecules in the film against pressure, for slower and faster shots. */
import { arrivalRatio, CONTAMINATION_BANDS } from '../../../../engine/gas/contamination.ts';
import type { Coat } from '../../../../engine/index.ts';
import type { LogChartData } from '../../../charts/log/logChartTypes.ts';
import type { Units } from '../../../state/units.ts';
import { residualGas } from '../gas/residualGas.ts';
import { pressureAxis } from '../pressureAxis.ts';
import type { ContaminationCase } from '../../../../engine/vacuum/contaminationCase.ts';

/** Ratios beyond these say nothing more, unless this shot lies there. */
const [LOWEST, HIGHEST] = [1e-4, 1];
const TIMES = 10;

export function contaminationChart(
  { plant }: Coat,
  { leastRate, worst }: ContaminationCase,
  units: Units,
): LogChartData {
  const { axis, pressures, x, mark } = pressureAxis(plant.vacuum.pressure, units);
  const ratios = (rate: number): Float64Array =>
    pressures.map((pressure) => arrivalRatio(residualGas(plant.vacuum, pressure), rate, plant.film.density));
  return {
    xAxis: axis,
    yAxis: {
      label: 'Molecules per atom',
      unit: '',
      range: [Math.min(LOWEST, worst / 2), Math.max(HIGHEST, 2 * worst)],
    },
    series: [
      { label: 'this shot', x, y: ratios(leastRate) },
      { label: 'ten times slower', x, y: ratios(leastRate / TIMES) },
      { label: 'ten times faster', x, y: ratios(leastRate * TIMES) },
    ],
    thresholds: [
      mark,
      ...CONTAMINATION_BANDS.filter(({ upTo }) => Number.isFinite(upTo)).map(
        ({ name, upTo }) => ({ axis: 'y', value: upTo, label: `${name} below this` }) as const,
      ),
    ],
  };
}
