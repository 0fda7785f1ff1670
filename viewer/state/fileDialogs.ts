/** The browser's dialogs for opening and saving. */
import { fileOpen, fileSave } from 'browser-fs-access';
import { useDesign } from './designStore.ts';
import { openFiles, refuse } from './openFiles.ts';

/** A dialog that the user closes without choosing is no fault. */
function isClosed(error: unknown): boolean {
  return error instanceof DOMException && error.name === 'AbortError';
}

/** Lets the user choose a design and the files that it names. */
export async function chooseFiles(): Promise<void> {
  try {
    await openFiles(
      await fileOpen({
        multiple: true,
        description: 'Design, filament lists and meshes',
        mimeTypes: ['application/json', 'text/csv', 'model/stl'],
        extensions: ['.json', '.csv', '.stl'],
      }),
    );
  } catch (error) {
    if (!isClosed(error)) refuse('The files cannot be opened', [{ path: '', message: String(error) }]);
  }
}

/** A file name from the plant's name: "Tarn Hill 2.6 m" becomes "tarn-hill-2-6-m.json". */
export function fileNameOf(name: string): string {
  const words = name.toLowerCase().match(/[\p{L}\p{N}]+/gu);
  return `${words?.join('-') ?? 'design'}.json`;
}

/** Saves the current design; answers the name it was saved under, or null if it was not saved. */
export async function saveDesign(): Promise<string | null> {
  const { file } = useDesign.getState().current;
  const blob = new Blob([`${JSON.stringify(file, null, 2)}\n`], { type: 'application/json' });
  const fileName = fileNameOf(file.name);
  try {
    const handle = await fileSave(blob, { fileName, extensions: ['.json'], description: 'Design' });
    return handle?.name ?? fileName;
  } catch (error) {
    if (!isClosed(error)) refuse('The design cannot be saved', [{ path: '', message: String(error) }]);
    return null;
  }
}
