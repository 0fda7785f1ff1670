/** The title with its dot, the keys for saving, and the question when leaving too early. */
import { useDesign } from '../designStore.ts';
import { saveDesign, saveDesignAs } from '../fileDialogs.ts';
import { flush, hasAnyPending } from './keeper.ts';
import { useKeep } from './keepStore.ts';

/** The design's name, with a dot before it while it lies in no file. */
function titleOf(name: string, isUnsaved: boolean): string {
  return `${isUnsaved ? '• ' : ''}${name} – Evenfall`;
}

/** Keeps the page's title. */
export function followTitle(): void {
  const show = (): void => {
    document.title = titleOf(useDesign.getState().current.file.name, useKeep.getState().isUnsaved);
  };
  useDesign.subscribe(show);
  useKeep.subscribe(show);
  show();
}

/** Ctrl+S saves, with Shift under another name; a field that is being typed in takes its value first. */
function onKeyDown(event: KeyboardEvent): void {
  if (!(event.ctrlKey || event.metaKey) || event.altKey || event.key.toLowerCase() !== 's') return;
  event.preventDefault();
  if (event.repeat) return;
  const { activeElement } = document;
  if (activeElement instanceof HTMLInputElement) {
    activeElement.blur();
    activeElement.focus();
  }
  void (event.shiftKey ? saveDesignAs() : saveDesign());
}

export function followSaveKeys(): void {
  window.addEventListener('keydown', onKeyDown);
}

/** Writes at once when the page goes out of sight, and lets the browser ask while something is not written. */
export function followLeaving(): void {
  document.addEventListener('visibilitychange', () => document.visibilityState === 'hidden' && void flush());
  window.addEventListener('pagehide', () => void flush());
  window.addEventListener('beforeunload', (event) => {
    if (!hasAnyPending()) return;
    void flush();
    event.preventDefault();
  });
}
