/** Runs of points in the module's memory, so that a run that comes again needs no copy. */
import type { OrientedPoints } from '../../geometry/orientedPoints.ts';
import { RUN } from '../depositKernel.ts';

/** Runs that stay; SLOTS of assembly/layout.ts. They hold a face of 65,000 points. */
const SLOTS = 128;

/** Arrays of a run: three coordinates, three of the normal. */
const ARRAYS = 6;

/** Where the points that fill up the last run stand, m: so far away that no distance is zero. */
const FAR = 1e6;

/** Sets of points up to this size are copied every time, so that they may change. */
const SMALL = 16;

/** A run in memory. */
export interface PlacedRun {
  /** its address */
  readonly at: number;
  /** what its coordinates are relative to: the origin, or in single precision the middle of the run, m */
  readonly origin: readonly [number, number, number];
}

export interface RunStore {
  /** The run that starts at `begin`, a multiple of RUN; copied into memory unless it is there. Points of a set larger than SMALL must not change. */
  place(points: OrientedPoints, begin: number): PlacedRun;
}

/** Middle of the bounding box of points begin … end. */
function middleOf({ position: p }: OrientedPoints, begin: number, end: number): [number, number, number] {
  const middle: [number, number, number] = [0, 0, 0];
  for (let k = 0; k < 3; k++) {
    let [low, high] = [Infinity, -Infinity];
    for (let o = 3 * begin + k; o < 3 * end; o += 3) {
      low = Math.min(low, p[o]!);
      high = Math.max(high, p[o]!);
    }
    middle[k] = (low + high) / 2;
  }
  return middle;
}

/**
 * Makes the store.
 *
 * Places are given out in turn: a run that is loaded anew takes that of the oldest.
 *
 * @param at address of the first place
 * @param isSingle whether runs are in single precision
 */
export function createRunStore(buffer: ArrayBuffer, at: number, isSingle: boolean): RunStore {
  const Numbers = isSingle ? Float32Array : Float64Array;
  const runBytes = ARRAYS * RUN * Numbers.BYTES_PER_ELEMENT;
  const memory = new Numbers(buffer, at, SLOTS * ARRAYS * RUN);
  const placed = Array.from({ length: SLOTS }, (): PlacedRun | undefined => undefined);
  const ofPoints = new WeakMap<OrientedPoints, (PlacedRun | undefined)[]>();
  let turn = 0;

  const pack = (points: OrientedPoints, begin: number, slot: number, origin: PlacedRun['origin']): void => {
    const { position, normal } = points;
    const run = memory.subarray(slot * ARRAYS * RUN, (slot + 1) * ARRAYS * RUN);
    const count = Math.min(RUN, points.count - begin);
    for (let i = 0, o = 3 * begin; i < count; i++, o += 3) {
      for (let k = 0; k < 3; k++) {
        run[k * RUN + i] = position[o + k]! - origin[k]!;
        run[(k + 3) * RUN + i] = normal[o + k]!;
      }
    }
    for (let k = 0; k < ARRAYS; k++) run.fill(k === 0 ? FAR : 0, k * RUN + count, (k + 1) * RUN);
  };

  return {
    place(points, begin) {
      if (begin % RUN !== 0) throw new RangeError(`a run starts at a multiple of ${RUN}; found ${begin}`);
      const runs = ofPoints.get(points) ?? [];
      const found = runs[begin / RUN];
      if (found && points.count > SMALL && placed[(found.at - at) / runBytes] === found) return found;
      const slot = turn++ % SLOTS;
      const origin: PlacedRun['origin'] = isSingle
        ? middleOf(points, begin, Math.min(begin + RUN, points.count))
        : [0, 0, 0];
      pack(points, begin, slot, origin);
      const run = { at: at + slot * runBytes, origin };
      placed[slot] = run;
      runs[begin / RUN] = run;
      ofPoints.set(points, runs);
      return run;
    },
  };
}
