/** Keeps the pinned variants in the browser's own database, so that they are there after reloading. */
import { openDB, type IDBPDatabase } from 'idb';
import { restoreVariants, variantsState } from './variantsState.ts';
import { useVariants } from './variantStore.ts';

const NAME = 'evenfall-variants';
const STORE = 'variants';
const KEY = 'pinned';
/** Changes that follow each other faster are written once, ms. */
const PAUSE = 500;

async function open(): Promise<IDBPDatabase> {
  return openDB(NAME, 1, { upgrade: (db) => void db.createObjectStore(STORE) });
}

/**
 * Brings the variants of the last session back, then writes every change of what is pinned. Variants
 * are the browser's, not a tab's: the tab that pins last is the one that is remembered. Without a
 * database they last as long as the page; a file of variants keeps them for good.
 */
export async function keepVariants(): Promise<void> {
  try {
    const db = await open();
    const kept: unknown = await db.get(STORE, KEY);
    if (kept !== undefined && useVariants.getState().variants.length === 0) restoreVariants(kept);
    let waiting: ReturnType<typeof setTimeout> | undefined;
    useVariants.subscribe(({ variants }, before) => {
      const isSame =
        variants.length === before.variants.length &&
        variants.every(
          ({ name, snapshot }, i) => name === before.variants[i]?.name && snapshot === before.variants[i].snapshot,
        );
      if (isSame) return;
      clearTimeout(waiting);
      waiting = setTimeout(() => void db.put(STORE, variantsState(), KEY).catch(() => {}), PAUSE);
    });
  } catch {
    // no database: the bar about keeping says so
  }
}
