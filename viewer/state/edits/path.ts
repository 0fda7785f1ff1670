/** Values in a design file by their path; each change returns a new file and shares what stays the same. */

/** Keys and list places from the outside in: ['filaments', 0, 'diameter']. */
export type Path = readonly (string | number)[];

type Holder = Readonly<Record<string | number, unknown>>;

const isHolder = (value: unknown): value is Holder => typeof value === 'object' && value !== null;

/** The value at a path; undefined where there is none. */
export function valueAt(root: unknown, path: Path): unknown {
  let value = root;
  for (const key of path) value = isHolder(value) && Object.hasOwn(value, key) ? value[key] : undefined;
  return value;
}

/** A section or list with one entry set, or without it if the value is undefined. */
function withEntry(holder: unknown, key: string | number, value: unknown): unknown {
  if (Array.isArray(holder)) {
    const list = holder as readonly unknown[];
    return value === undefined ? list.filter((_, i) => i !== key) : list.with(Number(key), value);
  }
  const entries = isHolder(holder) ? Object.entries(holder) : [];
  if (value === undefined) return Object.fromEntries(entries.filter(([name]) => name !== String(key)));
  const known = entries.some(([name]) => name === String(key));
  return Object.fromEntries(
    known ? entries.map(([name, old]) => [name, name === String(key) ? value : old]) : [...entries, [key, value]],
  );
}

/** Depth from which sections lie inside a part; parts and lists of parts stay even when empty. */
const INSIDE_PART = 1;

/**
 * The file with another value at a path. Undefined takes the entry away, and with it a section inside a
 * part that is left empty; sections that are missing on the way are made.
 */
export function withValue<Root>(root: Root, path: Path, value: unknown): Root {
  return changed(root, path, value, 0) as Root;
}

function changed(holder: unknown, path: Path, value: unknown, depth: number): unknown {
  const [key, ...rest] = path;
  if (key === undefined) return value;
  const inner = rest.length === 0 ? value : changed(valueAt(holder, [key]), rest, value, depth + 1);
  const isSpent = value === undefined && rest.length > 0 && depth >= INSIDE_PART && isEmptySection(inner);
  return withEntry(holder, key, isSpent ? undefined : inner);
}

function isEmptySection(value: unknown): boolean {
  return isHolder(value) && !Array.isArray(value) && Object.keys(value).length === 0;
}
