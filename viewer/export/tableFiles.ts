/** The coat as tables, in the columns that the command line writes. */
import type { Coat } from '../../engine/index.ts';
import { profileTable, thicknessTable, witnessTable } from '../../workers/cli/tables.ts';
import { textFile } from './fileKinds.ts';

export type TableName = 'thickness' | 'radial-profile' | 'witnesses';

const TABLES: Readonly<Record<TableName, (coat: Coat) => string>> = {
  thickness: thicknessTable,
  'radial-profile': profileTable,
  witnesses: witnessTable,
};

/** A table as CSV text. */
export function tableCsv(name: TableName, coat: Coat): string {
  return TABLES[name](coat);
}

export async function exportTable(name: TableName, coat: Coat): Promise<Blob> {
  return textFile(tableCsv(name, coat), 'csv');
}
