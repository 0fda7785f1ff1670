/** Measured pressures against time, and what is wrong with them. */

export interface PressureReading {
  /** s */
  readonly time: number;
  /** Pa */
  readonly pressure: number;
}

/** What is wrong with a reading; rows count from 1, the heading included where there is one. */
export interface ReadingFault {
  /** null if the whole is meant */
  readonly row: number | null;
  readonly column: 'time' | 'pressure' | null;
  readonly message: string;
}

/** Pa; a gauge that shows more is on the wrong unit. */
const HIGHEST = 1.1 * 101325;
type Column = NonNullable<ReadingFault['column']>;

/**
 * What is wrong with readings as such: times that do not rise, pressures that no tank has.
 *
 * @param firstRow row number of the first reading, for the messages
 */
export function readingFaults(readings: readonly PressureReading[], firstRow = 1): ReadingFault[] {
  const faults: ReadingFault[] = [];
  const complain = (i: number, column: Column, message: string): void =>
    void faults.push({ row: i + firstRow, column, message });
  readings.forEach(({ time, pressure }, i) => {
    const before = readings[i - 1];
    if (!Number.isFinite(time)) complain(i, 'time', `expected a time; found ${time}`);
    else if (before && time <= before.time)
      complain(i, 'time', `expected a time after the ${before.time} s of the row before; found ${time} s`);
    if (!Number.isFinite(pressure)) complain(i, 'pressure', `expected a pressure; found ${pressure}`);
    else if (pressure <= 0) complain(i, 'pressure', `expected a pressure above zero; found ${pressure} Pa`);
    else if (pressure > HIGHEST)
      complain(i, 'pressure', `expected at most atmospheric pressure; found ${pressure} Pa: is the unit right?`);
  });
  return faults;
}
