/** A material of the user's own, from a CSV table of wavelength, n and k. */
import { readSpectralCsv } from '../spectralCsv.ts';
import { tabulated, type Material } from './indexTable.ts';

export type ReadMaterial =
  { readonly ok: true; readonly material: Material } | { readonly ok: false; readonly messages: readonly string[] };

const COLUMNS = [
  { name: 'n', min: 0, isAbove: true, saying: 'greater than zero' },
  { name: 'k', min: 0, isOptional: true, saying: 'of zero or more (k of a material that absorbs is positive here)' },
] as const;

const PER_METRE_um = 1e6;

/**
 * Reads an index table: columns wavelength, n and, unless the material is clear, k; a unit row under the heading.
 *
 * @param name how the material is called in messages
 * @param source who measured it
 * @returns the material, or every fault with its row and column
 */
export function readIndexCsv(text: string, name: string, source: string): ReadMaterial {
  const { wavelength, columns, messages } = readSpectralCsv(text, COLUMNS);
  if (messages.length > 0) return { ok: false, messages };
  const column = (key: string): [number, number][] | undefined =>
    columns.get(key)?.map((value, i) => [wavelength[i]! * PER_METRE_um, value]);
  return { ok: true, material: { name, tables: [tabulated(name, source, column('n') ?? [], column('k'))] } };
}
