/** Changes to the filament sets of a design file; each returns a new file and leaves the old one alone. */
import type { DesignFile } from '../../engine/index.ts';

export type FilamentSetFile = DesignFile['filaments'][number];
type Exception = NonNullable<FilamentSetFile['exceptions']>[number];
/** What one filament may have of its own; undefined takes it away. */
export type OwnValues = { readonly charge?: string | undefined; readonly outOfUse?: boolean | undefined };

/** A record with a key set, or without it if the value is undefined. */
function withKey(record: object, key: string, value: unknown): object {
  const rest = Object.fromEntries(Object.entries(record).filter(([name]) => name !== key));
  if (value === undefined) return rest;
  return Object.hasOwn(record, key) ? { ...record, [key]: value } : { ...rest, [key]: value };
}

function withSet(file: DesignFile, iSet: number, change: (set: FilamentSetFile) => unknown): unknown {
  return { ...file, filaments: file.filaments.map((set, i) => (i === iSet ? change(set) : set)) };
}

/** Sets a field of a set, or removes it. */
export function withSetField(file: DesignFile, iSet: number, key: string, value: unknown): unknown {
  return withSet(file, iSet, (set) => withKey(set, key, value));
}

/** Gives one filament of a set values of its own; an exception that says nothing more is dropped. */
export function withOwnValues(file: DesignFile, iSet: number, filament: number, own: OwnValues): unknown {
  return withSet(file, iSet, (set) => {
    const exceptions = set.exceptions ?? [];
    const old: Exception = exceptions.find((exception) => exception.filament === filament) ?? { filament };
    let next: object = old;
    for (const [key, value] of Object.entries(own)) next = withKey(next, key, value === false ? undefined : value);
    const others = exceptions.filter((exception) => exception.filament !== filament);
    const all = Object.keys(next).length > 1 ? [...others, next as Exception] : others;
    const sorted = all.toSorted((a, b) => a.filament - b.filament);
    return withKey(set, 'exceptions', sorted.length > 0 ? sorted : undefined);
  });
}
