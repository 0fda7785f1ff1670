/**
 * Arrays that go round: what the store lets go of is written over by the next column, so that a stream of new
 * layouts asks the system for no memory. (Fresh pages cost as much as the sums, and threads wait for each other over them.)
 */
export interface Recycler {
  /** An array of this length with anything in it. */
  readonly take: (length: number) => Float64Array;
  /** Keeps an array from being given out again until it is let go as often as it was held. */
  readonly hold: (array: Float64Array) => void;
  readonly letGo: (array: Float64Array) => void;
  /** Says that the store has forgotten an array; it is given out again unless somebody holds it. */
  readonly giveBack: (array: Float64Array) => void;
}

/** @param mostBytes of arrays that wait to be given out; those of a length not asked for make room */
export function createRecycler(mostBytes: number): Recycler {
  /** by length, the one that was given out or back last at the end */
  const spare = new Map<number, Float64Array[]>();
  const holders = new Map<Float64Array, number>();
  let spareBytes = 0;

  /** The arrays of a length, as the last to make room. */
  const touch = (length: number): Float64Array[] => {
    const ofLength = spare.get(length) ?? [];
    spare.delete(length);
    spare.set(length, ofLength);
    return ofLength;
  };
  const dropOne = (): void => {
    for (const [length, ofLength] of spare) {
      const dropped = ofLength.pop();
      if (ofLength.length === 0) spare.delete(length);
      if (!dropped) continue;
      spareBytes -= dropped.byteLength;
      return;
    }
  };

  return {
    take(length) {
      const found = touch(length).pop();
      if (!found) return new Float64Array(length);
      spareBytes -= found.byteLength;
      return found;
    },
    hold(array) {
      holders.set(array, (holders.get(array) ?? 0) + 1);
    },
    letGo(array) {
      const left = (holders.get(array) ?? 0) - 1;
      if (left > 0) holders.set(array, left);
      else holders.delete(array);
    },
    giveBack(array) {
      if (holders.has(array)) return;
      touch(array.length).push(array);
      spareBytes += array.byteLength;
      while (spareBytes > mostBytes) dropOne();
    },
  };
}
