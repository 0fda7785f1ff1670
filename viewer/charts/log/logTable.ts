/** Lines and readings of a chart over one column of x. */
import { uPlot } from '../plot.ts';
import type { LogAxis, LogChartData } from './logChartTypes.ts';

export interface LogTable {
  /** x, then the lines, then the readings; each with the unit of its axis */
  readonly heads: readonly { readonly label: string; readonly unit: string }[];
  /** x of all, rising */
  readonly x: readonly number[];
  /** one column for each line and each kind of reading; null where it has no value of its own */
  readonly columns: readonly (readonly (number | null)[])[];
  /** how many of the columns are lines */
  readonly lineCount: number;
}

/** Whether an axis can show a value. */
export function isShown({ scale = 'log' }: LogAxis, value: number): boolean {
  return Number.isFinite(value) && (scale === 'linear' || value > 0);
}

export function logTable({ xAxis, yAxis, series, points = [] }: LogChartData): LogTable {
  const all = [...series, ...points];
  const heads = [{ label: xAxis.label, unit: xAxis.unit }, ...all.map(({ label }) => ({ label, unit: yAxis.unit }))];
  const tables = all.map(({ x, y }): [number[], (number | null)[]] => {
    const kept = Array.from(x, (value, i) => [value, y[i] ?? NaN] as const).filter(([value]) => isShown(xAxis, value));
    return [kept.map(([value]) => value), kept.map(([, value]) => (isShown(yAxis, value) ? value : null))];
  });
  const filled = tables.filter(([x]) => x.length > 0);
  const [x = [], ...joined] = filled.length > 0 ? (uPlot.join(filled) as [number[], ...(number | null)[][]]) : [];
  let next = 0;
  const columns = tables.map(([own]) =>
    own.length === 0 ? x.map(() => null) : Array.from(joined[next++] ?? [], (value) => value ?? null),
  );
  return { heads, x, columns, lineCount: series.length };
}

/**
 * What a line reads at a row of the table: its own value, or between its neighbours as the chart draws it; null beyond
 * its ends.
 */
export function readLine(
  { x, columns }: LogTable,
  iColumn: number,
  row: number,
  [xAxis, yAxis]: readonly [LogAxis, LogAxis],
): number | null {
  const column = columns[iColumn] ?? [];
  const own = column[row];
  if (own !== null && own !== undefined) return own;
  let before = row - 1;
  let after = row + 1;
  while (before >= 0 && column[before] === null) before--;
  while (after < x.length && column[after] === null) after++;
  const [y0, y1] = [column[before], column[after]];
  if (before < 0 || after >= x.length || typeof y0 !== 'number' || typeof y1 !== 'number') return null;
  const [toX, toY] = [xAxis, yAxis].map(({ scale = 'log' }) => (scale === 'log' ? Math.log : Number)) as [
    (value: number) => number,
    (value: number) => number,
  ];
  const share = (toX(x[row]!) - toX(x[before]!)) / (toX(x[after]!) - toX(x[before]!));
  const between = toY(y0) + share * (toY(y1) - toY(y0));
  return (yAxis.scale ?? 'log') === 'log' ? Math.exp(between) : between;
}

/** Rows worth showing: every so many, the first, the last, and each with a measured reading. */
export function shownRows({ x, columns, lineCount }: LogTable, most: number): readonly number[] {
  const last = x.length - 1;
  const rows = new Set<number>();
  for (let i = 0; i < Math.min(most, x.length); i++)
    rows.add(most === 1 || last === 0 ? 0 : Math.round((i * last) / (Math.min(most, x.length) - 1)));
  for (const column of columns.slice(lineCount)) column.forEach((value, row) => value !== null && rows.add(row));
  return [...rows].toSorted((a, b) => a - b);
}

/** Significant digits of a number in a file. */
const DIGITS = 7;

const cell = (text: string): string => (/[",\n]/.test(text) ? `"${text.replaceAll('"', '""')}"` : text);
const number = (value: number | null): string => (value === null ? '' : String(Number(value.toPrecision(DIGITS))));

/** The whole table as CSV (RFC 4180): a row of names, a row of units, then the numbers. */
export function logCsv({ heads, x, columns }: LogTable): string {
  const rows = [
    heads.map(({ label }) => cell(label)),
    heads.map(({ unit }) => cell(unit)),
    ...x.map((value, row) => [number(value), ...columns.map((column) => number(column[row] ?? null))]),
  ];
  return `${rows.map((row) => row.join(',')).join('\r\n')}\r\n`;
}
