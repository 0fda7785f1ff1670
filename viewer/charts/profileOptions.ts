/** How the profile chart looks. */
import type uPlot from 'uplot';
import type { Colors } from '../state/useColors.ts';
import { drawTargetAndAperture, drawToleranceBand } from './drawMarks.ts';
import type { ProfileUnits, ShownProfile } from './shownProfile.ts';

const FONT = '12px system-ui, sans-serif';
/** Room above and below the lines, as a share of what they span. */
const ROOM = 0.06;

/** Lowest and highest thickness on the chart: lines, tolerance band and target all fit. */
function heightRange(data: ShownProfile): [number, number] {
  const band = data.average * data.tolerance;
  const values = [...data.minimum, ...data.maximum, data.target, data.average - band, data.average + band];
  const low = values.reduce((least, value) => Math.min(least, value), Infinity);
  const high = values.reduce((most, value) => Math.max(most, value), -Infinity);
  const room = ROOM * (high - low || 1);
  return [Math.max(0, low - room), high + room];
}

/** Called with the index of the radius under the pointer, or null. */
type OnHover = (index: number | null) => void;

/** @param data gives what is to be shown whenever the plot is drawn */
export function profileOptions(
  data: () => ShownProfile,
  { length, thickness }: ProfileUnits,
  colors: Colors,
  size: { readonly width: number; readonly height: number },
  onHover: OnHover,
): uPlot.Options {
  const axis = {
    stroke: colors['text-2'],
    font: FONT,
    grid: { stroke: colors.line, width: 0.5 },
    ticks: { stroke: colors.line, width: 1, size: 4 },
  };
  const edge = { stroke: colors.accent, width: 0.75, points: { show: false } };
  return {
    ...size,
    pxAlign: false,
    padding: [6, 16, 0, 0],
    legend: { show: false },
    cursor: { y: false, drag: { x: false, y: false }, points: { size: 7, fill: colors.accent } },
    scales: { x: { time: false }, y: { range: () => heightRange(data()) } },
    axes: [
      { ...axis, size: 26, gap: 2, values: (_, ticks) => ticks.map((tick) => `${tick} ${length.unit}`) },
      { ...axis, size: 60, gap: 4, space: 24, values: (_, ticks) => ticks.map((tick) => `${tick} ${thickness.unit}`) },
    ],
    series: [{}, { stroke: colors.text, width: 2, points: { show: false } }, edge, edge],
    bands: [{ series: [3, 2], fill: `${colors.accent}33` }],
    hooks: {
      drawClear: [(plot) => drawToleranceBand(plot, data(), colors)],
      draw: [(plot) => drawTargetAndAperture(plot, data(), colors)],
      setCursor: [(plot) => onHover(plot.cursor.idx ?? null)],
    },
  };
}
