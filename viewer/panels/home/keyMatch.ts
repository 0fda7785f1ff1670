/** Which key a press was. */

/** What matters of a keyboard event; a press that is held down repeats. */
export interface Press {
  readonly key: string;
  readonly ctrlKey: boolean;
  readonly metaKey: boolean;
  readonly altKey: boolean;
  readonly shiftKey: boolean;
}

const isLetter = (key: string): boolean => /^[a-z]$/i.test(key);

/**
 * Whether a press is the key written as "P", "?" or "Ctrl+S". Ctrl is the command key on a Mac. Signs
 * are told by what they are, with Shift or without, as keyboards differ in that.
 */
export function isPress(event: Press, keys: string): boolean {
  const parts = keys.split('+');
  const key = parts.at(-1) ?? '';
  if (event.altKey) return false;
  if ((event.ctrlKey || event.metaKey) !== parts.includes('Ctrl')) return false;
  if (isLetter(key) && event.shiftKey !== parts.includes('Shift')) return false;
  return event.key.toLowerCase() === key.toLowerCase();
}
