/** Flights of single atoms as lines, to be drawn. */
import { CHUNK, createEnding, flyAtom } from './flight.ts';
import { prepareScatter, type ScatterProblem } from './scatterProblem.ts';

/** One atom's way. */
export interface Track {
  /** [3 · points] its start, the places of its collisions and leaps, its end; m */
  readonly points: Float64Array;
  /** where it stuck: FACE, GLASS_BODY, WALL, SHIELD or FIRST_OBSTACLE + caster, as in the mass budget */
  readonly place: number;
  /** slot of the tally that it counts in */
  readonly slot: number;
  /** index of its filament */
  readonly filament: number;
  readonly collisions: number;
  /** whether it leapt over diffusion: then a straight piece stands for a long wandering */
  readonly hasLeaps: boolean;
  /** whether places were left out between its first ones and its end, because there were too many */
  readonly isShortened: boolean;
}

/** Places kept of one atom, start and end included. */
const MOST_POINTS = 2000;

/**
 * The ways of the first atoms of a problem: the very ones that the calculation counts first.
 *
 * @param count number of atoms
 */
export async function flyTracks(problem: ScatterProblem, count: number): Promise<Track[]> {
  const prepared = await prepareScatter(problem);
  const ending = createEnding();
  return Array.from({ length: count }, (_, i) => {
    const points: number[] = [];
    let isShortened = false;
    flyAtom(prepared, Math.floor(i / CHUNK), i % CHUNK, ending, (x, y, z) => {
      if (points.length === 3 * MOST_POINTS) {
        points.length -= 3;
        isShortened = true;
      }
      points.push(x, y, z);
    });
    return {
      points: Float64Array.from(points),
      place: ending.place,
      slot: ending.slot,
      filament: prepared.emitters.filament[ending.emitter]!,
      collisions: ending.collisions,
      hasLeaps: ending.leaps > 0,
      isShortened,
    };
  });
}
