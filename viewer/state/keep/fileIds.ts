/** Keys of companion files in the database: the same bytes are kept once in a design. */
import type { NamedFiles } from '../../../engine/index.ts';
import { freshId, type KeptState } from './records.ts';

type Bytes = Uint8Array<ArrayBuffer>;

const ids = new WeakMap<Bytes, string>();

/** The key of a file's bytes; a new one the first time. */
export function fileIdOf(bytes: Bytes): string {
  const id = ids.get(bytes) ?? freshId();
  ids.set(bytes, id);
  return id;
}

/** Gives files that were read from the database the keys that they have there. */
export function knowFiles(state: KeptState, files: NamedFiles): void {
  for (const [name, id] of state.files) {
    const bytes = files.get(name);
    if (bytes) ids.set(bytes, id);
  }
}
