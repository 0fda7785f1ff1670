/** What an edit changed, in a word: so that edits of the same field can be told apart in a list. */

type Leaf = string | number | boolean;

const isLeaf = (value: unknown): value is Leaf => ['string', 'number', 'boolean'].includes(typeof value);
const isParent = (value: unknown): value is object => typeof value === 'object' && value !== null;
/** Longest value that is told. */
const MAX_LENGTH = 40;

/** New values of the leaves that differ, as far as they are only changed or added; null for any other difference. */
function changes(before: unknown, after: unknown): readonly (Leaf | null)[] {
  if (before === after) return [];
  if (isLeaf(after) && (isLeaf(before) || before === undefined)) return [after];
  if (!isParent(before) || !isParent(after) || Array.isArray(before) !== Array.isArray(after)) return [null];
  const keys = new Set([...Object.keys(before), ...Object.keys(after)]);
  const found: (Leaf | null)[] = [];
  for (const key of keys) {
    found.push(...changes((before as Record<string, unknown>)[key], (after as Record<string, unknown>)[key]));
    if (found.length > 1) break; // more than one cannot be said in a word
  }
  return found;
}

/** The one value that is new in a file, such as "0.95 m"; null if there is none, or more than one. */
export function changedValue(before: unknown, after: unknown): string | null {
  const [value, ...others] = changes(before, after);
  if (others.length > 0 || value === undefined || value === null) return null;
  const text = typeof value === 'boolean' ? (value ? 'yes' : 'no') : String(value);
  return text.length <= MAX_LENGTH ? text : null;
}
