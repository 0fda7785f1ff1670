/** What differs between two places of two designs, whatever they are: nothing that the schema knows is left out. */
import { isSame } from './isSame.ts';
import { isRecord, stepInto, type Spot } from './spot.ts';
import { changeText, keyWords, spotText, WHOLE_LIST } from './valueText.ts';

/** Lines about the items of one list before the rest is only counted. */
const MAX_ITEMS = 8;
/** Keys by which items of a list are told apart. */
const IDENTITIES = ['name', 'power', 'filament'];

const isPlain = (item: unknown): boolean => typeof item !== 'object' || item === null;

/** Keys of two records, in the order of the first. */
export function keysOfBoth(a: unknown, b: unknown): string[] {
  return [...new Set([a, b].flatMap((value) => (isRecord(value) ? Object.keys(value) : [])))];
}

/** A key whose value names each item of both lists, once. */
function identityOf(...lists: readonly (readonly unknown[])[]): string | undefined {
  return IDENTITIES.find((key) =>
    lists.every((list) => {
      const names = list.map((item) => (isRecord(item) ? item[key] : undefined));
      return names.every((name) => name !== undefined) && new Set(names).size === names.length;
    }),
  );
}

/** The item of a list with this name. */
function itemNamed(list: Spot, identity: string, name: unknown): Spot {
  const items = list.value as readonly Record<string, unknown>[];
  const i = items.findIndex((item) => item[identity] === name);
  return i < 0 ? { raw: undefined, value: undefined, schemas: [] } : stepInto(list, i);
}

function itemChanges(a: Spot, b: Spot, words: string): string[] {
  const [first, second] = [a.value as readonly unknown[], b.value as readonly unknown[]];
  const identity = identityOf(first, second);
  if (identity !== undefined) {
    const names = new Set([...first, ...second].map((item) => (item as Record<string, unknown>)[identity]));
    return [...names].flatMap((name) =>
      changesAt(
        itemNamed(a, identity, name),
        itemNamed(b, identity, name),
        `${words} ${identity === 'name' ? '' : `of ${identity} `}${String(name)}`,
      ),
    );
  }
  const count = first.length === second.length ? [] : [`${words}: ${first.length} → ${second.length} values`];
  const common = Array.from({ length: Math.min(first.length, second.length) }, (_, i) =>
    changesAt(stepInto(a, i), stepInto(b, i), `${words} ${i + 1}`),
  ).flat();
  const more = common.length > MAX_ITEMS ? [`${words}: ${common.length - MAX_ITEMS} more of its values differ`] : [];
  return [...count, ...common.slice(0, MAX_ITEMS), ...more];
}

/**
 * What differs at a place, in words.
 *
 * @param words what the place is called, such as "emission power"
 * @param key its key in the file, which may have a sign of its own
 */
export function changesAt(a: Spot, b: Spot, words: string, key = ''): string[] {
  if (isSame(a.value, b.value)) return [];
  if (isRecord(a.value) && isRecord(b.value)) return changesIn(a, b, words);
  if (isRecord(b.value) && a.value === undefined) return [`${words} added (${spotText(b)})`];
  if (isRecord(a.value) && b.value === undefined) return [`${words} removed (${spotText(a)})`];
  if (Array.isArray(a.value) && Array.isArray(b.value)) {
    const isShown = [a.value, b.value].every((list: unknown[]) => list.length <= WHOLE_LIST && list.every(isPlain));
    if (!isShown) return itemChanges(a, b, words);
  }
  return [changeText(words, key, a, b)];
}

/** What differs inside two records, key by key. */
export function changesIn(a: Spot, b: Spot, words = '', except: readonly string[] = []): string[] {
  return keysOfBoth(a.value, b.value)
    .filter((key) => !except.includes(key))
    .flatMap((key) => {
      const [first, second] = [stepInto(a, key), stepInto(b, key)];
      const name = keyWords(key, first, second);
      return changesAt(first, second, words ? `${words} ${name}` : name, key);
    });
}
