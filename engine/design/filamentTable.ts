/** Filament lists as CSV: a heading row, a unit row, then a row for each filament. */
import { dsvFormat } from 'd3-dsv';
import type { FilamentSetDesign } from './designSchema.ts';
import { MAX_FILAMENTS } from './filamentSchema.ts';
import { parseQuantity, quoteValue, type DimensionName } from './quantity.ts';

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
    .map((name) => `row 1: unknown column ${quoteValue(name)}; known are ${Object.keys(COLUMNS).join(', ')}`);
  for (const name of new Set(heading.filter((column, i) => heading.indexOf(column) !== i)))
    messages.push(`row 1: the column "${name}" stands twice`);
  const missing = ['x', 'y', 'z'].filter((name) => !heading.includes(name));
  if (missing.length > 0) messages.push(`row 1: expected the columns x, y and z; missing ${missing.join(', ')}`);
  const axis = AXIS.filter((name) => heading.includes(name));
  if (axis.length > 0 && axis.length < 3)
    messages.push(`row 1: expected axis_x, axis_y and axis_z together; found ${axis.join(', ')}`);
  return messages;
}

/**
 * Reads a filament list. Cells take their unit from the unit row; a decimal comma needs semicolons
 * or tabs between the cells. All faults are reported, none is skipped.
 */
export function readFilamentTable(text: string): FilamentTable {
  const rows = dsvFormat(separatorOf(text))
    .parseRows(text.replace(/^\uFEFF/, ''))
    .map((row) => row.map((cell) => cell.trim()));
  while (rows.at(-1)?.every((cell) => cell === '')) rows.pop();
  const [heading, units, ...body] = rows;
  if (!heading || !units || body.length === 0)
    return { filaments: [], messages: ['expected a heading row, a unit row and at least one filament'] };
  if (body.length > MAX_FILAMENTS)
    return { filaments: [], messages: [`expected at most ${MAX_FILAMENTS} filaments; found ${body.length}`] };
  const messages = headingMessages(heading);
  if (messages.length > 0) return { filaments: [], messages };
  const filaments: ListedFilament[] = [];
  body.forEach((row, i) => {
    if (row.length !== heading.length)
      messages.push(`row ${i + 3}: expected ${heading.length} cells, as in the heading; found ${row.length}`);
    else filaments.push(readRow(row, heading, units, `row ${i + 3}`, messages));
  });
  return { filaments, messages };
}

function readRow(
  row: readonly string[],
  heading: readonly string[],
  units: readonly string[],
  place: string,
  messages: string[],
): ListedFilament {
  const cell = (column: string): string => row[heading.indexOf(column)] ?? '';
  const measured = (column: string, dimension: DimensionName): number => {
    const parsed = parseQuantity(`${cell(column)} ${units[heading.indexOf(column)] ?? ''}`, dimension);
    if (!parsed.ok) messages.push(`${place}, column ${column}: ${parsed.message}`);
    return parsed.ok ? parsed.value : 0;
  };
  const plain = (column: string): number => {
    const value = cell(column) === '' ? NaN : Number(cell(column).replace(',', '.'));
    if (!Number.isFinite(value))
      messages.push(`${place}, column ${column}: expected a plain number; found ${quoteValue(cell(column))}`);
    return value;
  };
  const filament: ListedFilament = {
    position: [measured('x', 'length'), measured('y', 'length'), measured('z', 'length')],
  };
  if (cell('name') !== '') filament.name = cell('name');
  if (cell('feed') !== '') filament.feed = cell('feed');
  if (cell('charge') !== '') {
    filament.charge = measured('charge', 'mass');
    if (filament.charge < 0)
      messages.push(`${place}, column charge: expected a mass of zero or more; found ${quoteValue(cell('charge'))}`);
  }
  if (heading.includes('axis_x')) {
    const [x, y, z] = AXIS.map(plain) as [number, number, number];
    const length = Math.hypot(x, y, z);
    if (length === 0) messages.push(`${place}: expected an axis that is not zero`);
    filament.axis = [x / length, y / length, z / length];
  }
  return filament;
}
