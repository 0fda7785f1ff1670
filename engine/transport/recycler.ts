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

/** @param mostBytes of arrays that wait to be given out; when there would be more, those that wait are forgotten */
export function createRecycler(mostBytes: number): Recycler {
  const spare = new Map<number, Float64Array[]>();
  const holders = new Map<Float64Array, number>();
  let spareBytes = 0;
  return {
    take(length) {
      const found = spare.get(length)?.pop();
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
      const { byteLength, length } = array;
      if (holders.has(array) || byteLength > mostBytes) return;
      if (spareBytes + byteLength > mostBytes) {
        spare.clear(); // or lengths that nobody asks for any more would fill it for good
        spareBytes = 0;
      }
      spareBytes += byteLength;
      const ofLength = spare.get(length);
      if (ofLength) ofLength.push(array);
      else spare.set(length, [array]);
    },
  };
}
