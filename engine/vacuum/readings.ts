/** Measured pressures against time: read from pasted columns, and checked. */
import { dsvFormat } from 'd3-dsv';
import { suggestion } from '../design/fields.ts';
import { isUnit, knownUnits, parseQuantity, quoteValue, type DimensionName } from '../design/quantity.ts';

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

export interface PressureReadings {
  /** in the order of their rows; none if there are faults */
  readonly readings: readonly PressureReading[];
  readonly faults: readonly ReadingFault[];
}

/** Most readings that are taken. */
const MOST = 5000;
/** Pa; a gauge that shows more is on the wrong unit. */
const HIGHEST = 1.1 * 101325;
const COLUMNS: Readonly<Record<'time' | 'pressure', DimensionName>> = { time: 'duration', pressure: 'pressure' };
type Column = keyof typeof COLUMNS;

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

function separatorOf(text: string): string {
  const heading = text.slice(0, text.search(/[\r\n]|$/));
  return heading.includes('\t') ? '\t' : heading.includes(';') ? ';' : ',';
}

const fault = (row: number | null, column: Column | null, message: string): ReadingFault => ({ row, column, message });

function headingFaults(heading: readonly string[], units: readonly string[]): ReadingFault[] {
  const known = Object.keys(COLUMNS) as Column[];
  const faults = heading
    .filter((name) => !Object.hasOwn(COLUMNS, name))
    .map((name) => fault(1, null, `unknown column ${quoteValue(name)}; ${suggestion(name, known)}`));
  for (const name of known) {
    const at = heading.indexOf(name);
    if (at < 0) faults.push(fault(1, name, `expected a column "${name}"; it is missing`));
    else if (heading.lastIndexOf(name) > at) faults.push(fault(1, name, `the column "${name}" stands twice`));
    else if (!isUnit(COLUMNS[name], units[at] ?? ''))
      faults.push(
        fault(2, name, `expected a unit, one of ${knownUnits(COLUMNS[name])}; found ${quoteValue(units[at])}`),
      );
  }
  return faults;
}

/**
 * Reads pasted columns: a heading row with "time" and "pressure", a row of units, then the readings. Cells are
 * parted by tabs, semicolons or commas; a decimal comma needs tabs or semicolons. All faults are told at once.
 */
export function readPressures(text: string): PressureReadings {
  const separator = separatorOf(text);
  const rows = dsvFormat(separator)
    .parseRows(text.replace(/^\uFEFF/, ''))
    .map((row) => row.map((cell) => cell.trim()));
  while (rows.at(-1)?.every((cell) => cell === '')) rows.pop();
  const [heading = [], units = [], ...body] = rows;
  const names = heading.map((name) => name.toLowerCase());
  if (body.length === 0)
    return refuse([
      fault(null, null, 'expected a heading row "time; pressure", a row of units and at least one reading'),
    ]);
  if (body.length > MOST) return refuse([fault(null, null, `expected at most ${MOST} readings; found ${body.length}`)]);
  const faults = headingFaults(names, units);
  if (faults.length > 0) return refuse(faults);
  const cellOf = (row: readonly string[], column: Column, i: number): number => {
    const at = names.indexOf(column);
    const cell = row[at] ?? '';
    const parsed = parseQuantity(`${separator === ',' ? cell : cell.replace(',', '.')} ${units[at]}`, COLUMNS[column]);
    if (cell === '') faults.push(fault(i + 3, column, 'expected a number; found nothing'));
    else if (!parsed.ok) faults.push(fault(i + 3, column, parsed.message));
    return parsed.ok ? parsed.value : NaN;
  };
  const readings = body.map((row, i) => ({ time: cellOf(row, 'time', i), pressure: cellOf(row, 'pressure', i) }));
  if (faults.length === 0) faults.push(...readingFaults(readings, 3));
  return faults.length > 0 ? refuse(faults) : { readings, faults };
}

const refuse = (faults: readonly ReadingFault[]): PressureReadings => ({ readings: [], faults });
