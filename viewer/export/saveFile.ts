/** Saves a finished file through the browser's dialog, or as a download where there is none. */
import { fileSave } from 'browser-fs-access';
import { KINDS, type FileKind } from './fileKinds.ts';
import { fileNameOf } from '../format/fileName.ts';
import { refuse } from '../state/refusal.ts';

/** "tarn-hill-2-6-m-map.png" from the plant's name. */
export function exportName(plantName: string, what: string, kind: FileKind): string {
  return `${fileNameOf(plantName).replace(/\.json$/, '')}-${what}.${kind}`;
}

/**
 * Saves what is still being made, so that the dialog opens at once.
 *
 * @returns the name it was saved under, or null if the user changed their mind or it failed; the page then says why
 */
export async function saveFile(content: Promise<Blob>, fileName: string, kind: FileKind): Promise<string | null> {
  const { mimeType, description } = KINDS[kind];
  try {
    const handle = await fileSave(content, { fileName, extensions: [`.${kind}`], mimeTypes: [mimeType], description });
    return handle?.name ?? fileName;
  } catch (error) {
    const isClosed = error instanceof DOMException && error.name === 'AbortError';
    const message = error instanceof Error ? error.message : String(error);
    if (!isClosed) refuse(`${fileName} cannot be saved`, [{ path: '', message }]);
    return null;
  }
}
