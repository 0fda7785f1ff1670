/**
 * The files that designs were saved to, so that the next saving writes them again without asking. They are known only
 * as long as the page lives: a browser that was seen here broke down over a file handle in a database in memory.
 */

/** A file that can be written again. */
export interface SaveTarget {
  readonly handle: FileSystemFileHandle;
  /** the file's own time after our last writing, ms: another one means that somebody else has written it */
  readonly modified: number;
}

const targets = new Map<string, SaveTarget>();

/** Remembers where a design was saved to; null where the browser does not tell. */
export function setSaveTarget(designId: string, target: SaveTarget | null): void {
  if (target) targets.set(designId, target);
  else targets.delete(designId);
}

/** The file to write again, or null to ask: for a new design, and when somebody else has written or moved the file. */
export async function fileToWrite(designId: string | undefined): Promise<FileSystemFileHandle | null> {
  const target = designId === undefined ? undefined : targets.get(designId);
  if (!target) return null;
  try {
    const { lastModified } = await target.handle.getFile();
    return lastModified === target.modified ? target.handle : null;
  } catch {
    return null;
  }
}

/** The name that a design was last saved under, if it is known. */
export function savedName(designId: string | undefined): string | undefined {
  return designId === undefined ? undefined : targets.get(designId)?.handle.name;
}
