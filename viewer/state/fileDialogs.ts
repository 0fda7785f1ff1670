/** The browser's dialogs for opening and saving. */
import { designText } from '../format/designText.ts';
import { fileOpen, fileSave } from 'browser-fs-access';
import { create } from 'zustand';
import { fileNameOf } from '../format/fileName.ts';
import { useDesign } from './designStore.ts';
import { noteSaved } from './keep/keeper.ts';
import { traceOf } from './keep/lineage.ts';
import { fileToWrite, savedName, setSaveTarget } from './keep/saveTargets.ts';
import { openFiles } from './openFiles.ts';
import { refuse } from './refusal.ts';

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

/** The last saving by the dialogs: under which name, counted so that the same name twice is news again. */
export const useSaved = create<{ readonly name: string | null; readonly count: number }>(() => ({
  name: null,
  count: 0,
}));

async function save(again: boolean): Promise<string | null> {
  const snapshot = useDesign.getState().current;
  const { file } = snapshot;
  const designId = traceOf(snapshot)?.design.id;
  const blob = new Blob([designText(file)], { type: 'application/json' });
  const fileName = savedName(designId) ?? fileNameOf(file.name);
  try {
    const options = { fileName, extensions: ['.json'], description: 'Design' };
    const handle = await fileSave(blob, options, again ? await fileToWrite(designId) : null);
    const modified = (await handle?.getFile())?.lastModified ?? 0;
    setSaveTarget(noteSaved(snapshot), handle && { handle, modified });
    const name = handle?.name ?? fileName;
    useSaved.setState(({ count }) => ({ name, count: count + 1 }));
    return name;
  } catch (error) {
    if (!isClosed(error)) refuse('The design cannot be saved', [{ path: '', message: String(error) }]);
    return null;
  }
}

/**
 * Saves the current design: to the file that it was saved to before, or else to one that the user chooses.
 *
 * @returns the name it was saved under, or null if it was not saved
 */
export async function saveDesign(): Promise<string | null> {
  return save(true);
}

/** Saves the current design to a file that the user chooses; answers like saveDesign. */
export async function saveDesignAs(): Promise<string | null> {
  return save(false);
}
