/** Spectral tables as CSV: a heading row, a unit row, then a row for each wavelength. */
import { dsvFormat } from 'd3-dsv';
import { suggestion } from '../design/fields.ts';
import { isUnit, knownUnits, parseQuantity, quoteValue } from '../design/quantity.ts';

/** Most rows that are read. */
const MAX_ROWS = 20_000;

/** A column beside the wavelength: a plain number within limits. */
export interface SpectralColumn {
  readonly name: string;
  readonly isOptional?: boolean;
  /** smallest value, inclusive unless `isAbove` */
  readonly min: number;
  readonly isAbove?: boolean;
  /** what the limits mean in words, such as "of zero or more" */
  readonly saying: string;
}

export interface SpectralTable {
  /** [rows] rising, m */
  readonly wavelength: readonly number[];
  /** [rows] of each column that the table has */
  readonly columns: ReadonlyMap<string, readonly number[]>;
  /** what is wrong, each with its row (counted from 1 with the heading) and column; then there are no values */
  readonly messages: readonly string[];
}

const WAVELENGTH = 'wavelength';
const NO_UNIT = ['', '1', '-', '–'];

const refused = (messages: readonly string[]): SpectralTable => ({ wavelength: [], columns: new Map(), messages });

function separatorOf(text: string): string {
  const heading = text.slice(0, text.search(/[\r\n]|$/));
  return heading.includes('\t') ? '\t' : heading.includes(';') ? ';' : ',';
}

function headingMessages(heading: readonly string[], wanted: readonly SpectralColumn[]): string[] {
  const known = [WAVELENGTH, ...wanted.map(({ name }) => name)];
  const messages = heading
    .filter((name) => !known.includes(name))
    .map((name) => `row 1: unknown column ${quoteValue(name)}; ${suggestion(name, known)}`);
  for (const name of new Set(heading.filter((column, i) => heading.indexOf(column) !== i)))
    messages.push(`row 1: the column ${quoteValue(name)} stands twice`);
  const needed = [WAVELENGTH, ...wanted.filter(({ isOptional }) => !isOptional).map(({ name }) => name)];
  const missing = needed.filter((name) => !heading.includes(name));
  if (missing.length > 0)
    messages.push(`row 1: expected the columns ${needed.join(', ')}; missing ${missing.join(', ')}`);
  return messages;
}

function unitMessages(heading: readonly string[], units: readonly string[]): string[] {
  if (units.length !== heading.length)
    return [`row 2: expected ${heading.length} units, as many as columns; found ${units.length}`];
  return heading.flatMap((column, i) => {
    const unit = units[i] ?? '';
    if (column !== WAVELENGTH)
      return NO_UNIT.includes(unit)
        ? []
        : [`row 2, column ${column}: expected no unit, as it is a plain number; found ${quoteValue(unit)}`];
    if (isUnit('length', unit)) return [];
    const found = unit === '' ? 'nothing' : quoteValue(unit);
    return [
      `row 2, column ${column}: expected a unit of length (${knownUnits('length')}), such as nm or um; found ${found}`,
    ];
  });
}

interface Layout {
  readonly heading: readonly string[];
  readonly unit: string;
  readonly hasDecimalCommas: boolean;
  readonly messages: string[];
}

const readable = (cell: string, { hasDecimalCommas }: Layout): string =>
  hasDecimalCommas ? cell.replace(',', '.') : cell;

function readWavelength(cell: string, place: string, layout: Layout): number {
  const parsed = parseQuantity(`${readable(cell, layout)} ${layout.unit}`, 'length');
  const complain = (message: string): void =>
    void layout.messages.push(`${place}, column ${WAVELENGTH}: ${message}; found ${quoteValue(cell)}`);
  if (cell === '') complain('expected a number');
  else if (!parsed.ok) complain(`expected a number of ${layout.unit}`);
  else if (!(parsed.value > 0)) complain('expected a wavelength greater than zero');
  return parsed.ok ? parsed.value : NaN;
}

function readNumber(cell: string, column: SpectralColumn, place: string, layout: Layout): number {
  const text = readable(cell, layout);
  const value = text === '' ? NaN : Number(text);
  if (!Number.isFinite(value) || value < column.min || (column.isAbove === true && value === column.min))
    layout.messages.push(
      `${place}, column ${column.name}: expected a number ${column.saying}; found ${cell === '' ? 'nothing' : quoteValue(cell)}`,
    );
  return value;
}

/**
 * Reads a table of numbers against wavelength. All faults are reported with row and column, none is
 * skipped; a decimal comma needs semicolons or tabs between the cells.
 *
 * @param wanted columns beside "wavelength"
 */
export function readSpectralCsv(text: string, wanted: readonly SpectralColumn[]): SpectralTable {
  const separator = separatorOf(text);
  const rows = dsvFormat(separator)
    .parseRows(text.replace(/^\uFEFF/, ''))
    .map((row) => row.map((cell) => cell.trim()));
  while (rows.at(-1)?.every((cell) => cell === '')) rows.pop();
  const [heading, units, ...body] = rows;
  if (!heading || !units || body.length < 2)
    return refused(['expected a heading row, a unit row and at least two wavelengths']);
  if (body.length > MAX_ROWS) return refused([`expected at most ${MAX_ROWS} wavelengths; found ${body.length}`]);
  const faults = [...headingMessages(heading, wanted), ...unitMessages(heading, units)];
  if (faults.length > 0) return refused(faults);
  const unit = units[heading.indexOf(WAVELENGTH)] ?? '';
  const layout: Layout = { heading, unit, hasDecimalCommas: separator !== ',', messages: [] };
  const present = wanted.filter(({ name }) => heading.includes(name));
  const wavelength: number[] = [];
  const columns = new Map(present.map(({ name }) => [name, [] as number[]]));
  body.forEach((row, i) => {
    const place = `row ${i + 3}`;
    if (row.length !== heading.length) {
      layout.messages.push(`${place}: expected ${heading.length} cells, as in the heading; found ${row.length}`);
      return;
    }
    const cell = (name: string): string => row[heading.indexOf(name)] ?? '';
    const at = readWavelength(cell(WAVELENGTH), place, layout);
    const before = wavelength.at(-1);
    if (before !== undefined && at <= before)
      layout.messages.push(
        `${place}, column ${WAVELENGTH}: expected wavelengths that rise from row to row; found ${quoteValue(cell(WAVELENGTH))}`,
      );
    wavelength.push(at);
    for (const column of present) columns.get(column.name)?.push(readNumber(cell(column.name), column, place, layout));
  });
  return layout.messages.length > 0 ? refused(layout.messages) : { wavelength, columns, messages: [] };
}
