/** Keys that work wherever the focus is, except while one types. */
import { useEffect, useRef } from 'react';
import { isPress } from './keyMatch.ts';
import { registerKeys, type KeyHelp } from './keys.ts';

export interface KeyBinding extends KeyHelp {
  /** "P", "?" or "Ctrl+S" */
  readonly keys: string;
  readonly run: () => void;
}

const WITHOUT_TYPING = new Set(['checkbox', 'radio', 'button', 'range', 'color', 'file', 'submit', 'reset']);

function isField(target: EventTarget | null): target is HTMLElement {
  if (!(target instanceof HTMLElement)) return false;
  if (target instanceof HTMLInputElement) return !WITHOUT_TYPING.has(target.type);
  return target instanceof HTMLTextAreaElement || target instanceof HTMLSelectElement || target.isContentEditable;
}

/** In a field with unfinished typing every key belongs to the field; in any other, those without Ctrl. */
function isTyping({ target, ctrlKey, metaKey }: KeyboardEvent): boolean {
  if (!isField(target)) return false;
  return !(ctrlKey || metaKey) || target.dataset['draft'] !== undefined;
}

/** A dialog that covers the page has the keyboard to itself. */
const isCovered = (): boolean => document.querySelector('dialog:modal') !== null;

/**
 * Binds keys for as long as the component is there, and lists them in the help.
 *
 * @param bindings as a constant, or memoised: the help lists them anew when they change
 */
export function useGlobalKeys(title: string, bindings: readonly KeyBinding[]): void {
  const latest = useRef(bindings);
  latest.current = bindings;
  useEffect(() => registerKeys(title, bindings), [title, bindings]);
  useEffect(() => {
    const onKeyDown = (event: KeyboardEvent): void => {
      if (event.defaultPrevented || event.repeat || isTyping(event) || isCovered()) return;
      const binding = latest.current.find(({ keys }) => isPress(event, keys));
      if (!binding) return;
      event.preventDefault();
      binding.run();
    };
    window.addEventListener('keydown', onKeyDown);
    return () => window.removeEventListener('keydown', onKeyDown);
  }, []);
}
