/** How a chart with logarithmic axes looks. */
import { scientific } from '../../format/scientific.ts';
import type { Colors } from '../../state/useColors.ts';
import { uPlot } from '../plot.ts';
import { drawNames, drawReadings, drawThresholds } from './drawLog.ts';
import { isShown, type LogTable } from './logTable.ts';
import type { LogAxis, LogChartData } from './logChartTypes.ts';

const FONT = '12px system-ui, sans-serif';
/** Dashes in the order of the lines: full, long, short, dash and dot, dotted. */
const DASHES: readonly (readonly number[])[] = [[], [10, 5], [4, 3], [10, 4, 2, 4], [2, 3]];
const TICK_DIGITS = 4;
/** Decades shown at most: what lies lower than that below the highest value is as good as zero. */
const MOST_DECADES = 15;
/** Room around the data on a linear axis, as a share of what they span. */
const ROOM = 0.05;

/** The range of an axis: as asked, or around all that is to be seen, fifteen decades at most. */
export function axisRange(axis: LogAxis, values: readonly number[]): [number, number] {
  if (axis.range) return [...axis.range];
  const seen = values.filter((value) => isShown(axis, value));
  if (seen.length === 0) return [1, 10];
  const low = seen.reduce((least, value) => Math.min(least, value), Infinity);
  const high = seen.reduce((most, value) => Math.max(most, value), -Infinity);
  if ((axis.scale ?? 'log') === 'linear') {
    const room = ROOM * (high - low || Math.abs(high) || 1);
    return [low - room, high + room];
  }
  return low === high ? [low / 2, high * 2] : [Math.max(low, high * 10 ** -MOST_DECADES), high];
}

/** Decades up to which an axis has lines between the powers of ten. */
const FINE_DECADES = 5;

const isPower = (value: number): boolean => value.toExponential().startsWith('1e');

/** Names of ticks; those that the chart leaves out for want of room come as null. */
function tickTexts(ticks: readonly (number | null)[]): string[] {
  return ticks.map((tick) => (tick === null ? '' : scientific(tick, TICK_DIGITS)));
}

export function logOptions(
  data: LogChartData,
  table: LogTable,
  colors: Colors,
  size: { readonly width: number; readonly height: number },
  onHover: (row: number | null) => void,
): uPlot.Options {
  const { xAxis, yAxis, series, points = [], thresholds = [] } = data;
  const wanted = (name: 'x' | 'y'): number[] => thresholds.flatMap(({ axis, value }) => (axis === name ? value : []));
  const [xRange, yRange] = [
    axisRange(xAxis, [...table.x, ...wanted('x')]),
    axisRange(yAxis, [...table.columns.flat().map((value) => value ?? NaN), ...wanted('y')]),
  ];
  const scale = (axis: LogAxis, range: [number, number]): uPlot.Scale =>
    (axis.scale ?? 'log') === 'log'
      ? { time: false, distr: 3, range: () => uPlot.rangeLog(range[0], range[1], 10, false) }
      : { time: false, range: () => range };
  const look = {
    stroke: colors['text-2'],
    font: FONT,
    labelFont: FONT,
    grid: { stroke: colors.line, width: 0.5 },
    ticks: { stroke: colors.line, width: 1, size: 4 },
    values: (_: uPlot, ticks: (number | null)[]) => tickTexts(ticks),
  };
  // over many decades the lines between them would fill the chart with grey
  const lines = (axis: LogAxis, [low, high]: [number, number]) => {
    const isLong = (axis.scale ?? 'log') === 'log' && high / low > 10 ** FINE_DECADES;
    const filter = (_: uPlot, ticks: number[]) => ticks.map((tick) => (isLong && !isPower(tick) ? null : tick));
    return { grid: { ...look.grid, filter }, ticks: { ...look.ticks, filter } };
  };
  const title = ({ label, unit }: LogAxis): string => (unit === '' ? label : `${label}, ${unit}`);
  const inks = [colors.text, colors.accent, colors['text-2']];
  return {
    ...size,
    pxAlign: false,
    padding: [10, 16, 0, 0],
    legend: { show: false },
    cursor: { y: false, drag: { x: false, y: false }, points: { show: false } },
    scales: { x: scale(xAxis, xRange), y: scale(yAxis, yRange) },
    axes: [
      { ...look, ...lines(xAxis, xRange), size: 26, gap: 2, label: title(xAxis), labelSize: 18, labelGap: 0 },
      { ...look, ...lines(yAxis, yRange), size: 56, gap: 4, label: title(yAxis), labelSize: 18, labelGap: 0 },
    ],
    series: [
      {},
      ...series.map(({ label, dash }, i) => ({
        label,
        stroke: inks[i % inks.length]!,
        width: i === 0 ? 2 : 1.75,
        dash: [...(dash ?? DASHES[i % DASHES.length]!)],
        spanGaps: true,
        points: { show: false },
      })),
      ...points.map(({ label }) => ({ label, width: 0, points: { show: false } })),
    ],
    hooks: {
      draw: [
        (plot) => drawThresholds(plot, data, colors),
        (plot) => drawReadings(plot, data, colors),
        (plot) => drawNames(plot, data, inks, colors),
      ],
      setCursor: [(plot) => onHover(plot.cursor.idx ?? null)],
    },
  };
}
