/** Filament lists as CSV: a heading row, a unit row, then a row for each filament. */
import { dsvFormat } from 'd3-dsv';
import type { FilamentSetDesign } from './designSchema.ts';
import { suggestion } from './fields.ts';
import { MAX_FILAMENTS } from './filamentSchema.ts';
import { DIMENSIONS, isUnit, knownUnits, parseQuantity, quoteValue, type DimensionName } from './quantity.ts';

export type ListedFilament = NonNullable<Extract<FilamentSetDesign, { arrangement: 'list' }>['filaments']>[number];

const COLUMNS: Readonly<Record<string, DimensionName | 'number' | 'text'>> = {
  name: 'text',
  x: 'length',
  y: 'length',
  z: 'length',
  axis_x: 'number',
  axis_y: 'number',
  axis_z: 'number',
  charge: 'mass',
  feed: 'text',
};
const AXIS = ['axis_x', 'axis_y', 'axis_z'] as const;

export interface FilamentTable {
  readonly filaments: readonly ListedFilament[];
  /** each names its row, counted from 1 with the heading, and its column */
  readonly messages: readonly string[];
}

function separatorOf(text: string): string {
  const heading = text.slice(0, text.search(/[\r\n]|$/));
  return heading.includes('\t') ? '\t' : heading.includes(';') ? ';' : ',';
}

function headingMessages(heading: readonly string[]): string[] {
  const messages = heading
    .filter((name) => !Object.hasOwn(COLUMNS, name))
    .map((name) => `row 1: unknown column ${quoteValue(name)}; ${suggestion(name, Object.keys(COLUMNS))}`);
  for (const name of new Set(heading.filter((column, i) => heading.indexOf(column) !== i)))
    messages.push(`row 1: the column "${name}" stands twice`);
  const missing = ['x', 'y', 'z'].filter((name) => !heading.includes(name));
  if (missing.length > 0) messages.push(`row 1: expected the columns x, y and z; missing ${missing.join(', ')}`);
  const axis = AXIS.filter((name) => heading.includes(name));
  if (axis.length > 0 && axis.length < 3)
    messages.push(`row 1: expected axis_x, axis_y and axis_z together; found ${axis.join(', ')}`);
  return messages;
}

/** What is wrong with the unit row, column by column; an empty cell is right only over a column without unit. */
function unitMessages(heading: readonly string[], units: readonly string[]): string[] {
  if (units.length !== heading.length)
    return [`row 2: expected ${heading.length} units, as many as columns; found ${units.length}`];
  if (heading.every((column, i) => isPlain(column) || (units[i] !== '' && Number.isFinite(Number(units[i])))))
    return [`row 2: expected units, such as m or mm; found ${units.map(quoteValue).join(', ')}`];
  return heading.flatMap((column, i) => {
    const kind = COLUMNS[column];
    if (kind === undefined || kind === 'number' || kind === 'text' || isUnit(kind, units[i] ?? '')) return [];
    const found = units[i] === '' ? 'nothing' : quoteValue(units[i]);
    return [
      `row 2, column ${column}: expected a unit of ${DIMENSIONS[kind].noun.replace(/^an? /, '')}, such as ${ordinaryUnits(kind)}; found ${found}`,
    ];
  });
}

function isPlain(column: string): boolean {
  return COLUMNS[column] === 'number' || COLUMNS[column] === 'text';
}

function ordinaryUnits(kind: DimensionName): string {
  return knownUnits(kind).split(', ').slice(0, 4).join(', ');
}

/**
 * Reads a filament list. Cells take their unit from the unit row; a decimal comma needs semicolons
 * or tabs between the cells. All faults are reported, none is skipped.
 */
export function readFilamentTable(text: string): FilamentTable {
  const separator = separatorOf(text);
  const rows = dsvFormat(separator)
    .parseRows(text.replace(/^\uFEFF/, ''))
    .map((row) => row.map((cell) => cell.trim()));
  while (rows.at(-1)?.every((cell) => cell === '')) rows.pop();
  const [heading, units, ...body] = rows;
  if (!heading || !units || body.length === 0)
    return { filaments: [], messages: ['expected a heading row, a unit row and at least one filament'] };
  if (body.length > MAX_FILAMENTS)
    return { filaments: [], messages: [`expected at most ${MAX_FILAMENTS} filaments; found ${body.length}`] };
  const messages = [...headingMessages(heading), ...unitMessages(heading, units)];
  if (messages.length > 0) return { filaments: [], messages };
  const table: Table = { heading, units, hasDecimalCommas: separator === ';', messages };
  const filaments: ListedFilament[] = [];
  body.forEach((row, i) => {
    if (row.length !== heading.length)
      messages.push(`row ${i + 3}: expected ${heading.length} cells, as in the heading; found ${row.length}`);
    else filaments.push(readRow(row, table, `row ${i + 3}`));
  });
  return { filaments, messages };
}

interface Table {
  readonly heading: readonly string[];
  readonly units: readonly string[];
  /** semicolons part cells where the comma is the decimal sign, so "1,450" is 1.45 and not 1450 */
  readonly hasDecimalCommas: boolean;
  readonly messages: string[];
}

function readRow(row: readonly string[], { heading, units, ...table }: Table, place: string): ListedFilament {
  const cell = (column: string): string => row[heading.indexOf(column)] ?? '';
  const complain = (column: string, message: string): void =>
    void table.messages.push(`${place}, column ${column}: ${message}`);
  const measured = (column: string, dimension: DimensionName): number => {
    const digits = table.hasDecimalCommas ? cell(column).replace(',', '.') : cell(column);
    const parsed = parseQuantity(`${digits} ${units[heading.indexOf(column)] ?? ''}`, dimension);
    if (digits === '') complain(column, 'expected a number; found nothing');
    else if (!parsed.ok) complain(column, parsed.message);
    return parsed.ok ? parsed.value : 0;
  };
  const plain = (column: string): number => {
    const value = cell(column) === '' ? NaN : Number(cell(column).replace(',', '.'));
    if (!Number.isFinite(value)) complain(column, `expected a plain number; found ${quoteValue(cell(column))}`);
    return value;
  };
  const named = (column: string): string => {
    if (cell(column).length > 80)
      complain(column, `expected a name of 1 to 80 characters; found ${quoteValue(cell(column))}`);
    return cell(column);
  };
  const filament: ListedFilament = {
    position: [measured('x', 'length'), measured('y', 'length'), measured('z', 'length')],
  };
  if (cell('name') !== '') filament.name = named('name');
  if (cell('feed') !== '') filament.feed = named('feed');
  if (cell('charge') !== '') {
    filament.charge = measured('charge', 'mass');
    if (filament.charge < 0) complain('charge', `expected a mass of zero or more; found ${quoteValue(cell('charge'))}`);
  }
  if (heading.includes('axis_x')) {
    const [x, y, z] = AXIS.map(plain) as [number, number, number];
    const length = Math.hypot(x, y, z);
    if (length === 0 || length === Infinity)
      table.messages.push(`${place}: expected an axis that is not zero; found (${AXIS.map(cell).join(', ')})`);
    filament.axis = [x / length, y / length, z / length];
  }
  return filament;
}
