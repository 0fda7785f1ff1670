/** A design as text. */
import type { DesignFile } from '../../engine/index.ts';

/** For a file that people read: indented, with a last line break. */
export function designText(file: DesignFile): string {
  return `${JSON.stringify(file, null, 2)}\n`;
}

/** For the database and for links: the shortest form. */
export function keptText(file: DesignFile): string {
  return JSON.stringify(file);
}
