/** Atoms counted by where they ended: whole numbers, so that adding them up in any order gives the same. */
import { createEnding, CHUNK, flyAtom } from './flight.ts';
import type { PreparedScatter } from './scatterProblem.ts';

export interface ScatterTally {
  /** atoms flown */
  readonly atoms: number;
  /** collisions computed */
  readonly collisions: number;
  /** leaps over diffusion taken */
  readonly leaps: number;
  /** [slots] atoms that ended on their first flight, by slot (see Slots) */
  readonly ballistic: Float64Array;
  /** [slots] atoms that ended after a collision or more */
  readonly scattered: Float64Array;
}

/** A tally of nothing. */
export function emptyTally(slotCount: number): ScatterTally {
  return {
    atoms: 0,
    collisions: 0,
    leaps: 0,
    ballistic: new Float64Array(slotCount),
    scattered: new Float64Array(slotCount),
  };
}

/** Flies the CHUNK atoms of a chunk. Depends on the problem and the chunk's number alone. */
export function flyChunk(prepared: PreparedScatter, iChunk: number): ScatterTally {
  const tally = emptyTally(prepared.slots.count);
  const ending = createEnding();
  let collisions = 0;
  let leaps = 0;
  for (let i = 0; i < CHUNK; i++) {
    flyAtom(prepared, iChunk, i, ending);
    const counts = ending.collisions === 0 ? tally.ballistic : tally.scattered;
    counts[ending.slot]!++;
    collisions += ending.collisions;
    leaps += ending.leaps;
  }
  return { ...tally, atoms: CHUNK, collisions, leaps };
}

/** Several tallies of the same problem as one; order does not matter, to the last atom. */
export function mergeTallies(tallies: readonly ScatterTally[]): ScatterTally {
  const [first] = tallies;
  if (!first) throw new RangeError('there are no tallies to merge');
  const merged = { atoms: 0, collisions: 0, leaps: 0 };
  const ballistic = new Float64Array(first.ballistic.length);
  const scattered = new Float64Array(first.scattered.length);
  for (const tally of tallies) {
    merged.atoms += tally.atoms;
    merged.collisions += tally.collisions;
    merged.leaps += tally.leaps;
    for (let i = 0; i < ballistic.length; i++) {
      ballistic[i]! += tally.ballistic[i]!;
      scattered[i]! += tally.scattered[i]!;
    }
  }
  return { ...merged, ballistic, scattered };
}

/** Largest stretch of chunks that mergeTallies holds at once. */
const HELD = 256;

/** Flies chunks first … first + count and adds them up; the caller may breathe after each. */
export async function flyChunks(
  prepared: PreparedScatter,
  first: number,
  count: number,
  step?: (share: number) => void | Promise<void>,
): Promise<ScatterTally> {
  let held: ScatterTally[] = [emptyTally(prepared.slots.count)];
  for (let i = 0; i < count; i++) {
    held.push(flyChunk(prepared, first + i));
    if (held.length >= HELD) held = [mergeTallies(held)];
    await step?.((i + 1) / count);
  }
  return mergeTallies(held);
}
