/** Pressure and gas loads of a pump-down, as chart data in the user's units. */
import type { PumpDownCurve, PumpDownEventKind } from '../../../../engine/vacuum/pumpDownCurve.ts';
import { GLOW_WINDOW } from '../../../../engine/vacuum/glow.ts';
import type { PressureReading } from '../../../../engine/vacuum/readings.ts';
import type { LogAxis, LogChartData, LogThreshold } from '../../../charts/log/logChartTypes.ts';
import type { Units } from '../../../state/units.ts';
import { shownPressure } from '../pressureAxis.ts';
import { flowUnit, shownFlow } from '../vacuumText.ts';
import type { PumpingCase } from './pumpingCase.ts';

const MINUTE = 60;
const HOUR = 3600;
/** s; longer pump-downs are drawn in hours. */
const IN_HOURS_FROM = 10 * HOUR;
/** First time drawn, s: before it nothing has happened. */
const FIRST = 6;

export interface TimeUnit {
  readonly unit: string;
  readonly seconds: number;
}

/** Minutes, or hours for a long pump-down. */
export function timeUnitOf({ time, count }: PumpDownCurve): TimeUnit {
  return time[count - 1]! > IN_HOURS_FROM ? { unit: 'h', seconds: HOUR } : { unit: 'min', seconds: MINUTE };
}

function timeAxis({ time, count }: PumpDownCurve, { unit, seconds }: TimeUnit): LogAxis {
  return { label: 'Time', unit, range: [FIRST / seconds, Math.max(time[count - 1]!, 2 * FIRST) / seconds] };
}

/** Times of a curve that rise strictly: an event doubles its time, so that the curve can bend there. */
function risingIndices({ time, count }: PumpDownCurve): number[] {
  const kept: number[] = [];
  for (let i = 0; i < count; i++) {
    if (!(time[i]! > 0)) continue;
    const last = kept.at(-1);
    if (last !== undefined && time[i]! <= time[last]!) kept[kept.length - 1] = i;
    else kept.push(i);
  }
  return kept;
}

const EVENT_LABELS: Readonly<Partial<Record<PumpDownEventKind, string>>> = {
  'glow starts': 'glow starts',
  'firing pressure': 'ready',
};

/** Decades that two names need between their lines. */
const APART = 0.8;

function thresholdsOf({ system, curve }: PumpingCase, units: Units, { seconds }: TimeUnit): LogThreshold[] {
  const level = (value: number, label: string): LogThreshold => ({
    axis: 'y',
    value: shownPressure(units, value),
    label,
  });
  const [glowFrom] = GLOW_WINDOW.pressure;
  const isNear = system.glow !== null && Math.abs(Math.log10(system.crossover / glowFrom)) < APART;
  return [
    level(system.crossover, isNear ? '' : 'crossover'),
    ...(system.glow
      ? [level(glowFrom, isNear ? 'glow window and crossover' : 'glow window'), level(GLOW_WINDOW.pressure[1], '')]
      : []),
    level(curve.until, 'firing'),
    ...curve.events.flatMap(({ kind, time }) => {
      const label = EVENT_LABELS[kind];
      return label === undefined ? [] : [{ axis: 'x', value: time / seconds, label } as const];
    }),
  ];
}

/** Highest pressure drawn, Pa, and room below the lowest one for the names of events. */
const HIGHEST = 1.2e5;
const BELOW = 10;

/** Pressure against time, with partial pressures of water and what was measured. */
export function pressureChart(pumping: PumpingCase, measured: readonly PressureReading[], units: Units): LogChartData {
  const { curve } = pumping;
  const unit = timeUnitOf(curve);
  const kept = risingIndices(curve);
  const x = kept.map((i) => curve.time[i]! / unit.seconds);
  const line = (pressure: Float64Array): number[] => kept.map((i) => shownPressure(units, pressure[i]!));
  const drawn = measured.filter(({ time }) => time > 0);
  const lowest = Math.min(curve.until, ...curve.pressure, ...drawn.map(({ pressure }) => pressure));
  return {
    xAxis: timeAxis(curve, unit),
    yAxis: {
      label: 'Pressure',
      unit: units.pressure,
      range: [shownPressure(units, lowest / BELOW), shownPressure(units, HIGHEST)],
    },
    series: [
      { label: 'total', x, y: line(curve.pressure) },
      { label: 'water vapour', x, y: line(curve.partial[1]!) },
    ],
    points:
      drawn.length === 0
        ? []
        : [
            {
              label: 'measured',
              x: drawn.map(({ time }) => time / unit.seconds),
              y: drawn.map(({ pressure }) => shownPressure(units, pressure)),
            },
          ],
    thresholds: thresholdsOf(pumping, units, unit),
  };
}

/** Loads drawn by name; smaller ones are summed. */
const MOST_LOADS = 4;
/** Shares smaller than this are as good as none, %. */
const LEAST_SHARE = 0.1;

/** Each load's share of all gas against time. */
export function loadsChart({ curve }: PumpingCase): LogChartData {
  const unit = timeUnitOf(curve);
  const kept = risingIndices(curve);
  const x = kept.map((i) => curve.time[i]! / unit.seconds);
  const whole = kept.map((i) => curve.loads.reduce((sum, { flow }) => sum + flow[i]!, 0));
  const shares = curve.loads
    .map(({ name, flow }) => ({
      label: name,
      y: kept.map((i, k) => (whole[k]! > 0 ? (100 * flow[i]!) / whole[k]! : 0)),
    }))
    .filter(({ y }) => y.some((share) => share > LEAST_SHARE))
    .toSorted((a, b) => Math.max(...b.y) - Math.max(...a.y));
  const named = shares.slice(0, MOST_LOADS);
  const rest = shares.slice(MOST_LOADS);
  const others = { label: 'others', y: kept.map((_, k) => rest.reduce((sum, { y }) => sum + y[k]!, 0)) };
  return {
    xAxis: timeAxis(curve, unit),
    yAxis: { label: 'Share of all gas', unit: '%', scale: 'linear', range: [0, 105] },
    series: [...named, ...(rest.length > 0 ? [others] : [])].map((series) => ({ ...series, x })),
  };
}

/** Each load against time. */
export function flowsChart({ curve }: PumpingCase, units: Units): LogChartData {
  const unit = timeUnitOf(curve);
  const kept = risingIndices(curve);
  const x = kept.map((i) => curve.time[i]! / unit.seconds);
  const flows = curve.loads.map(({ name, flow }) => ({
    label: name,
    x,
    y: kept.map((i) => shownFlow(units, flow[i]!)),
  }));
  const seen = flows.filter(({ y }) => y.some((value) => value > 0));
  return { xAxis: timeAxis(curve, unit), yAxis: { label: 'Gas', unit: flowUnit(units) }, series: seen };
}
