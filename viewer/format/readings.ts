/** Measured readings as people paste or type them: rows of cells, with names and units above them or in the cells. */
import { dsvFormat } from 'd3-dsv';
import { parseQuantity, type DimensionName } from '../../engine/index.ts';

/** A column that a table of readings may have. */
export interface ReadingColumn {
  readonly name: string;
  /** a quantity of this dimension; a number without a unit; or any text */
  readonly holds: DimensionName | 'number' | 'text';
  /** whether every row must have it */
  readonly isNeeded: boolean;
}

export interface ReadingFault {
  /** from 1, with the heading; null if the table as a whole is meant */
  readonly row: number | null;
  readonly column: string | null;
  readonly message: string;
}

/** One row: SI numbers and texts by the name of their column; what is empty is left out. */
export type Reading = Readonly<Record<string, number | string>>;

export interface Readings {
  /** names over the cells as written, or as understood where there are none */
  readonly heading: readonly string[];
  /** the cells with the number of their line, from 1; heading and unit row are not among them */
  readonly rows: readonly { readonly number: number; readonly cells: readonly string[] }[];
  /** of all rows without a fault */
  readonly readings: readonly Reading[];
  readonly faults: readonly ReadingFault[];
}

type Line = Readings['rows'][number];

const isPlainNumber = (text: string): boolean => /^[+-]?(\d+[.,]?\d*|[.,]\d+)(e[+-]?\d+)?$/i.test(text);
const folded = (text: string): string => text.trim().toLowerCase();
/** "pressure (mbar)", "pressure [mbar]" and "pressure, mbar" name a column and its unit. */
const NAME_AND_UNIT = /^(.*?)\s*(?:\(([^()]*)\)|\[([^[\]]*)\]|,\s*(\S+))$/;

function linesOf(text: string): Line[] {
  const plain = text.replace(/^\uFEFF/, '');
  const [first = ''] = plain.trimStart().split(/[\r\n]/, 1);
  const separator = first.includes('\t') ? '\t' : first.includes(';') ? ';' : ',';
  return dsvFormat(separator)
    .parseRows(plain)
    .map((cells, i) => ({ number: i + 1, cells: cells.map((cell) => cell.trim()) }))
    .filter(({ cells }) => cells.some((cell) => cell !== ''));
}

/** A column of the table at hand: which one it is, and the unit that stands over it. */
interface Place {
  readonly column: ReadingColumn | null;
  readonly written: string;
  readonly unit: string | null;
}

function placeOf(written: string, columns: readonly ReadingColumn[]): Place {
  const find = (name: string): ReadingColumn | null =>
    columns.find((item) => folded(item.name) === folded(name)) ?? null;
  const whole = find(written);
  if (whole) return { column: whole, written, unit: null };
  const [, name = '', round, square, after] = NAME_AND_UNIT.exec(written) ?? [];
  return { column: find(name), written, unit: round ?? square ?? after ?? null };
}

/** Whether a text is a unit that a column can have. */
function isUnitOf(text: string, { holds }: ReadingColumn): boolean {
  return holds !== 'number' && holds !== 'text' && parseQuantity(`1 ${text}`, holds).ok;
}

function isUnitRow({ cells }: Line, places: readonly Place[]): boolean {
  const filled = cells.flatMap((cell, i) => (cell === '' ? [] : [[cell, places[i]?.column] as const]));
  return filled.length > 0 && filled.every(([cell, column]) => column && isUnitOf(cell, column));
}

type Cell = { readonly ok: true; readonly value: number | string } | { readonly ok: false; readonly message: string };

function readCell(cell: string, { holds }: ReadingColumn, unit: string | null): Cell {
  if (holds === 'text') return { ok: true, value: cell };
  if (holds === 'number')
    return isPlainNumber(cell)
      ? { ok: true, value: Number(cell.replace(',', '.')) }
      : { ok: false, message: `expected a number; found "${cell}"` };
  const parsed = parseQuantity(unit !== null && isPlainNumber(cell) ? `${cell} ${unit}` : cell, holds);
  return parsed.ok ? { ok: true, value: parsed.value } : { ok: false, message: parsed.message };
}

function readRow({ number, cells }: Line, places: readonly Place[], needed: readonly ReadingColumn[]) {
  const faults: ReadingFault[] = [];
  const reading: Record<string, number | string> = {};
  places.forEach(({ column, unit }, i) => {
    const cell = cells[i] ?? '';
    if (!column || cell === '') return;
    const read = readCell(cell, column, unit);
    if (read.ok) reading[column.name] = read.value;
    else faults.push({ row: number, column: column.name, message: read.message });
  });
  if (cells.length > places.length) {
    const message = `expected at most ${places.length} cells; found ${cells.length}`;
    faults.push({ row: number, column: null, message });
  }
  for (const { name } of needed) {
    const isTold = faults.some((fault) => fault.column === name);
    if (!(name in reading) && !isTold)
      faults.push({ row: number, column: name, message: 'expected a value; found none' });
  }
  return { reading, faults };
}

/**
 * Reads pasted or typed rows. A first row that names columns is the heading; without one the columns come in their
 * order. Units stand in the heading, in a row of their own below it, or in the cells.
 */
export function readReadings(text: string, columns: readonly ReadingColumn[]): Readings {
  const lines = linesOf(text);
  const [first] = lines;
  if (!first) return { heading: columns.map(({ name }) => name), rows: [], readings: [], faults: [] };
  const named = first.cells.map((cell) => placeOf(cell, columns));
  const hasHeading = named.some(({ column }) => column);
  const places = hasHeading ? named : columns.map((column): Place => ({ column, written: column.name, unit: null }));
  const below = lines.slice(hasHeading ? 1 : 0);
  const units = below[0] && isUnitRow(below[0], places) ? below[0] : null;
  const withUnits = places.map((place, i) => ({ ...place, unit: place.unit ?? (units?.cells[i] || null) }));
  const rows = units ? below.slice(1) : below;
  const faults: ReadingFault[] = [];
  const known = columns.map(({ name }) => name).join(', ');
  for (const { column, written, unit } of withUnits) {
    if (!column && written !== '')
      faults.push({ row: first.number, column: written, message: `unknown column; known are ${known}` });
    else if (column && unit !== null && !isUnitOf(unit, column))
      faults.push({ row: first.number, column: column.name, message: `"${unit}" is no unit of this column` });
  }
  const needed = columns.filter(({ isNeeded }) => isNeeded);
  const missing = needed.filter((column) => !withUnits.some((place) => place.column === column));
  for (const { name } of missing)
    faults.push({ row: null, column: name, message: `expected a column "${name}"; found none` });
  const present = needed.filter((column) => !missing.includes(column));
  const read = rows.map((line) => readRow(line, withUnits, present));
  return {
    heading: withUnits.map(({ written }) => written),
    rows,
    readings: read.flatMap((item) => (item.faults.length === 0 ? [item.reading] : [])),
    faults: [...faults, ...read.flatMap((item) => item.faults)],
  };
}
