/** Writes the broken designs to a folder, as a person would hand them to the command line. */
import { mkdirSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { BROKEN_DESIGNS, bytesOf } from './brokenDesigns.ts';

export interface BrokenFile {
  readonly path: string;
  /** the path within the design that must be among those reported; empty for the file as a whole */
  readonly expectedPath: string;
  /** a part of the message at that path */
  readonly expectedMessage: string;
}

/**
 * Writes every broken design, each in a folder of its own together with the CSV and STL files that it names.
 *
 * @param folder an existing folder, such as a temporary one
 */
export function writeBrokenFiles(folder: string): BrokenFile[] {
  return BROKEN_DESIGNS.map((design, i) => {
    const own = join(folder, `${String(i + 1).padStart(3, '0')}-${design.name.replace(/\W+/g, '-')}`);
    mkdirSync(own, { recursive: true });
    const path = join(own, 'design.json');
    writeFileSync(path, design.text());
    for (const [name, bytes] of bytesOf(design.files)) writeFileSync(join(own, name), bytes);
    return { path, expectedPath: design.path, expectedMessage: design.message };
  });
}
