/** One file from the system's dialog, as bytes. */
import { fileOpen } from 'browser-fs-access';

export interface ChosenFile {
  readonly name: string;
  readonly bytes: Uint8Array<ArrayBuffer>;
}

/** Lets the user choose a file; null if the dialog is closed without one. */
export async function chooseFile(description: string, extension: string): Promise<ChosenFile | null> {
  try {
    const file = await fileOpen({ description, extensions: [extension], multiple: false });
    return { name: file.name, bytes: new Uint8Array(await file.arrayBuffer()) };
  } catch (error) {
    if (error instanceof DOMException && error.name === 'AbortError') return null;
    throw error;
  }
}
