/** A pasted filament table as the dialog shows it: its cells, and each fault by row and column. */
import { dsvFormat } from 'd3-dsv';
import { readFilamentTable } from '../../../engine/design/filamentTable.ts';

export interface TableFault {
  /** from 1, with the heading; null if the table as a whole is meant */
  readonly row: number | null;
  readonly column: string | null;
  readonly message: string;
}

export interface TablePreview {
  readonly heading: readonly string[];
  /** the unit row and the filaments */
  readonly rows: readonly (readonly string[])[];
  readonly filamentCount: number;
  readonly faults: readonly TableFault[];
}

const PLACE = /^row (\d+)(?:, column ([^:]+))?: (.*)$/s;

function faultOf(message: string): TableFault {
  const match = PLACE.exec(message);
  if (!match) return { row: null, column: null, message };
  return { row: Number(match[1]), column: match[2] ?? null, message: match[3] ?? message };
}

/** Reads a table for its preview. */
export function previewTable(text: string): TablePreview {
  const { filaments, messages } = readFilamentTable(text);
  const [first = ''] = text.split(/[\r\n]/, 1);
  const separator = first.includes('\t') ? '\t' : first.includes(';') ? ';' : ',';
  const [heading = [], ...rows] = dsvFormat(separator).parseRows(text.replace(/^\uFEFF/, ''));
  return {
    heading: heading.map((cell) => cell.trim()),
    rows: rows.filter((row) => row.some((cell) => cell.trim() !== '')),
    filamentCount: messages.length === 0 ? filaments.length : 0,
    faults: messages.map(faultOf),
  };
}
