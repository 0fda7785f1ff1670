/** A sweep over pressures as chart data in the user's units. */
import { inUnit, type Coat } from '../../../../engine/index.ts';
import type { LogChartData } from '../../../charts/log/logChartTypes.ts';
import type { Units } from '../../../state/units.ts';
import { pressureAxis, shownPressure } from '../pressureAxis.ts';
import type { SweepRow } from './sweepRow.ts';

export const SWEEP_VIEWS = {
  mean: 'mean thickness',
  uniformity: 'uniformity',
  shares: 'where the vapour ends',
} as const;
export type SweepView = keyof typeof SWEEP_VIEWS;

const inPercent = (share: number): number => 100 * share;
/** Lines that run through what a perfect vacuum gives, from one end of the axis to the other. */
const across = (value: number): readonly [number, number] => [value, value];

export function sweepChart(view: SweepView, rows: readonly SweepRow[], coat: Coat, units: Units): LogChartData {
  const { axis, x: ends, mark } = pressureAxis(coat.plant.vacuum.pressure, units);
  const x = rows.map(({ pressure }) => shownPressure(units, pressure));
  const reach = [ends[0]!, ends.at(-1)!];
  const shared = { xAxis: axis, thresholds: [mark] };
  const thickness = (metres: number): number => inUnit(metres, 'length', units.thickness);
  const { mean, uniformity } = coat.statistics;
  switch (view) {
    case 'mean':
      return {
        ...shared,
        yAxis: { label: 'Mean thickness', unit: units.thickness, scale: 'linear' },
        series: [
          { label: 'in gas', x, y: rows.map((row) => thickness(row.mean.value)) },
          { label: 'perfect vacuum', x: reach, y: across(thickness(mean.value)) },
        ],
      };
    case 'uniformity':
      return {
        ...shared,
        yAxis: { label: 'Uniformity, ±', unit: '%', scale: 'linear' },
        series: [
          { label: 'in gas', x, y: rows.map((row) => inPercent(row.uniformity.value)) },
          { label: 'perfect vacuum', x: reach, y: across(inPercent(uniformity.value)) },
        ],
      };
    case 'shares':
      return {
        ...shared,
        yAxis: { label: 'Share of the vapour', unit: '%', scale: 'linear', range: [0, 105] },
        series: [
          { label: 'mirror, straight', x, y: rows.map(({ straight }) => inPercent(straight.value)) },
          { label: 'mirror, scattered', x, y: rows.map(({ scattered }) => inPercent(scattered.value)) },
          { label: 'elsewhere', x, y: rows.map(({ lost }) => inPercent(lost.value)) },
        ],
      };
  }
}
