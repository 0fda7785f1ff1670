/** What one thread remembers of its columns and their sums, within a bound, least recently used out first. */
import { LRUCache } from 'lru-cache';
import type { ArrivalMoments, Column } from './column.ts';
import { createRecycler } from './recycler.ts';

interface Kept {
  readonly column: Column;
  /** [points] sum of a few columns, kg/m² */
  readonly partial: Float64Array;
  readonly arrival: ArrivalMoments;
  /** see traceBudget */
  readonly shares: Float64Array;
}

export interface ColumnStore {
  /** An array of this length with anything in it. */
  readonly take: (length: number) => Float64Array;
  /** Takes an array to give it out again; nobody may use it any more. */
  readonly giveBack: (array: Float64Array) => void;
  /** What is kept at a place, if it is. */
  readonly find: <K extends keyof Kept>(place: string, what: K) => Kept[K] | undefined;
  /** What is kept at a place, or else what is computed now and kept from now on. */
  readonly keep: <K extends keyof Kept>(place: string, what: K, compute: () => Kept[K]) => Kept[K];
  /** Notes that columns are asked for, made or not; false, and nothing noted, if one of them was met before. */
  readonly meet: (places: readonly string[]) => boolean;
  /**
   * Shows a column that is in use until it is let go. The store keeps it if it was dear, or was met before.
   *
   * @param isDear whether it costs more to compute than to keep
   */
  readonly show: (place: string, column: Column, isDear: boolean) => void;
  /** Lets an array of a column that was shown be written over, unless the store has it. */
  readonly letGo: (place: string, column: Column) => void;
}

/** Share of the store's bytes that may wait to be written over. */
const SPARE_SHARE = 1 / 4;

/** Places remembered whose column was asked for and not kept. */
const MOST_MET = 10_000;

/** Bytes that an entry takes beside its numbers. */
const OVERHEAD = 256;

function sizeOf({ column, partial, arrival, shares }: Partial<Kept>): number {
  const arrays = [column?.deposit, column?.signature, partial, arrival?.angle, arrival?.grazing, shares];
  return arrays.reduce((sum, array) => sum + (array?.byteLength ?? 0), 0);
}

/** @param mostBytes of all that is kept; a quarter more may wait to be written over */
export function createColumnStore(mostBytes: number): ColumnStore {
  const recycler = createRecycler(SPARE_SHARE * mostBytes);
  const kept = new LRUCache<string, Partial<Kept>>({
    maxSize: mostBytes,
    maxEntrySize: mostBytes,
    sizeCalculation: (value) => OVERHEAD + sizeOf(value),
    dispose: ({ column, partial }) => {
      if (column) recycler.giveBack(column.deposit);
      if (partial) recycler.giveBack(partial);
    },
  });
  const met = new LRUCache<string, true>({ max: MOST_MET });

  const find: ColumnStore['find'] = (place, what) => kept.get(`${what} ${place}`)?.[what];
  const put = <K extends keyof Kept>(place: string, what: K, value: Kept[K]): void => {
    kept.set(`${what} ${place}`, { [what]: value } as Partial<Kept>);
  };
  return {
    take: recycler.take,
    giveBack: recycler.giveBack,
    find,
    keep: (place, what, compute) => {
      const found = find(place, what);
      if (found) return found;
      const made = compute();
      put(place, what, made);
      return made;
    },
    show: (place, column, isDear) => {
      // held before it is kept: keeping it may push out another that is in use
      recycler.hold(column.deposit);
      if (find(place, 'column') === column) return;
      if (isDear || met.delete(place)) put(place, 'column', column);
      else met.set(place, true);
    },
    meet: (places) => {
      if (places.some((place) => met.has(place) || find(place, 'column'))) return false;
      for (const place of places) met.set(place, true);
      return true;
    },
    letGo: (place, column) => {
      recycler.letGo(column.deposit);
      if (find(place, 'column') !== column) recycler.giveBack(column.deposit);
    },
  };
}
