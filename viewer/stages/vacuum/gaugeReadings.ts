/** Gauge readings as pasted into the page: pressure against time, checked row by row. */
import { readingFaults, type PressureReading } from '../../../engine/vacuum/readings.ts';
import { readReadings, type ReadingColumn, type ReadingFault } from '../../format/readings.ts';

export const GAUGE_COLUMNS: readonly ReadingColumn[] = [
  { name: 'time', holds: 'duration', isNeeded: true },
  { name: 'pressure', holds: 'pressure', isNeeded: true },
];

export interface GaugeReadings {
  /** s and Pa; none while anything is wrong with them */
  readonly readings: readonly PressureReading[];
  /** beyond what the rows say each by itself: times that do not rise, pressures that no tank has */
  readonly orderFaults: readonly ReadingFault[];
}

/** Reads pasted columns; faults of single cells are told by the table that they are pasted into. */
export function gaugeReadings(text: string): GaugeReadings {
  const read = readReadings(text, GAUGE_COLUMNS);
  if (read.faults.length > 0) return { readings: [], orderFaults: [] };
  const readings = read.readings.map(({ time, pressure }) => ({ time: Number(time), pressure: Number(pressure) }));
  const orderFaults = readingFaults(readings).map(({ row, column, message }) => ({
    row: row === null ? null : (read.rows[row - 1]?.number ?? row),
    column,
    message,
  }));
  return { readings: orderFaults.length > 0 ? [] : readings, orderFaults };
}
