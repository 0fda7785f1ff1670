/** Brings older design files to the current version. */
import { CURRENT_VERSION } from './designSchema.ts';
import type { Problem } from './problem.ts';
import { quoteValue } from './quantity.ts';

type Json = Readonly<Record<string, unknown>>;

/** Migrations[v] takes a file of version v to v + 1. */
const MIGRATIONS: readonly ((file: Json) => Json)[] = [
  // version 0 called the glass's diameter "diameter" and the wanted mean "thickness"
  (file) => ({
    ...file,
    version: 1,
    mirror: renamed(file['mirror'], 'diameter', 'outerDiameter'),
    ...(file['film'] === undefined ? {} : { film: renamed(file['film'], 'thickness', 'target') }),
  }),
];

function renamed(part: unknown, from: string, to: string): unknown {
  if (typeof part !== 'object' || part === null || !Object.hasOwn(part, from) || Object.hasOwn(part, to)) return part;
  const { [from]: value, ...rest } = part as Json;
  return { ...rest, [to]: value };
}

export type Migrated = { readonly ok: true; readonly file: Json } | { readonly ok: false; readonly problem: Problem };

/** The file in the current version; a newer or unknown version is refused. */
export function migrate(value: unknown): Migrated {
  if (typeof value !== 'object' || value === null || Array.isArray(value)) {
    return {
      ok: false,
      problem: { path: '', message: `expected a design, an object in braces; found ${quoteValue(value)}` },
    };
  }
  let file = value as Json;
  const { version } = file;
  if (typeof version !== 'number' || !Number.isInteger(version) || version < 0 || version > CURRENT_VERSION) {
    const newer =
      Number.isInteger(version) && Number(version) > CURRENT_VERSION ? ' (written by a newer Evenfall?)' : '';
    return {
      ok: false,
      problem: {
        path: 'version',
        message: `expected version ${CURRENT_VERSION}; found ${quoteValue(version)}${newer}`,
      },
    };
  }
  for (let v = version; v < CURRENT_VERSION; v++) file = MIGRATIONS[v]?.(file) ?? file;
  return { ok: true, file };
}
