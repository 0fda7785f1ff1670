/** Filament sets from CSV text. */
import type { DesignFile } from '../../../engine/index.ts';
import { readFilamentTable } from '../../../engine/design/filamentTable.ts';
import { typeHasCharge } from './charges.ts';
import { edited, freeName, withSet, type Edited, type ListFile } from './parts.ts';

/** Whether each filament of a table names its own charge. */
function hasAllCharges(csv: string): boolean {
  return readFilamentTable(csv).filaments.every(({ charge }) => charge !== undefined);
}

/**
 * The plant with the filaments of a set replaced by those of a table. The set keeps its name, type and
 * charge; its exceptions belonged to the old filaments and go, as does its number of feeds.
 */
export function withTable(file: DesignFile, iSet: number, csv: string): Edited {
  const set = file.filaments[iSet];
  if (!set) return edited(file);
  const { name, type, charge } = set;
  const list: ListFile = { arrangement: 'list', name, type, ...(charge !== undefined && { charge }), csv };
  return edited(withSet(file, iSet, list), { kind: 'set', index: iSet });
}

/** The plant with a table as one set more; where neither table nor type names a charge, each filament gets `charge`. */
export function withNewTable(file: DesignFile, type: string, csv: string, charge = '250 mg'): Edited {
  const needsCharge = !typeHasCharge(file.filamentTypes[type]) && !hasAllCharges(csv);
  const list: ListFile = {
    arrangement: 'list',
    name: freeName(
      'table',
      file.filaments.map(({ name }) => name),
    ),
    type,
    ...(needsCharge && { charge }),
    csv,
  };
  return edited({ ...file, filaments: [...file.filaments, list] }, { kind: 'set', index: file.filaments.length });
}
