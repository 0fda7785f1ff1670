/** A design that must be refused, and what must be said about it. */
import { editedDesign, type Edits } from './baseDesign.ts';

/** Content of the files that a design names. */
export type Companions = Readonly<Record<string, string | Uint8Array<ArrayBuffer>>>;

export interface BrokenDesign {
  readonly name: string;
  /** made when asked for: some are large */
  readonly text: () => string;
  /** the path that must be among those reported */
  readonly path: string;
  /** a part of the message at that path */
  readonly message: string;
  readonly files?: Companions;
}

/** The base design with one or two values changed. */
export function edit(name: string, edits: Edits, path: string, message: string, files?: Companions): BrokenDesign {
  const text = (): string => JSON.stringify(editedDesign(edits), null, 2);
  return files ? { name, text, path, message, files } : { name, text, path, message };
}

/** The base design with one piece of its text replaced, for what JSON.stringify would not write. */
export function rewrite(name: string, from: string, to: string, path: string, message: string): BrokenDesign {
  const text = (): string => {
    const before = JSON.stringify(editedDesign({}), null, 2);
    if (!before.includes(from)) throw new Error(`the base design holds no ${from}`);
    return before.replace(from, () => to);
  };
  return { name, text, path, message };
}

/** A text of its own. */
export function whole(name: string, text: () => string, path: string, message: string): BrokenDesign {
  return { name, text, path, message };
}
