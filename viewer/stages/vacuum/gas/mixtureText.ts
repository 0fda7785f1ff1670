/** A gas mixture as people write it in one line: "78 % N2, 21 % O2, 1 % Ar". */

/** A row of the file's mixture; what is no gas or no share is left for the engine to refuse. */
export interface MixtureRow {
  readonly gas: string;
  readonly share: string;
}

export function mixtureText(rows: readonly MixtureRow[]): string {
  return rows.map(({ gas, share }) => `${share} ${gas}`).join(', ');
}

/** A share, then the gas; or the gas, then its share. */
const SHARE_FIRST = /^([\d.,]+(?:e[+-]?\d+)?\s*(?:%|percent|ppm))\s*(?:of\s+)?(.+)$/i;
const GAS_FIRST = /^(.+?)\s*[:=]?\s+([\d.,]+(?:e[+-]?\d+)?\s*(?:%|percent|ppm))$/i;

function rowOf(part: string): MixtureRow {
  const [, share, gas] = SHARE_FIRST.exec(part) ?? [];
  if (share !== undefined && gas !== undefined) return { gas, share };
  const [, name = part, after = ''] = GAS_FIRST.exec(part) ?? [];
  return { gas: name, share: after };
}

/** Rows as they would stand in a file; undefined for an empty text, where the single gas holds. */
export function mixtureRows(text: string): readonly MixtureRow[] | undefined {
  const parts = text
    .split(/[;+]|,(?!\d)/)
    .map((part) => part.trim())
    .filter((part) => part !== '');
  return parts.length === 0 ? undefined : parts.map(rowOf);
}
