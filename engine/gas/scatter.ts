/** Scattering to a wanted error: rounds of chunks, whoever flies them. */
import type { Control } from '../transport/transport.ts';
import { CHUNK } from './flight.ts';
import { prepareScatter, type PreparedScatter, type ScatterProblem } from './scatterProblem.ts';
import { cellErrorOf, summarise, type ScatterSummary } from './scatterSummary.ts';
import { flyChunks, mergeTallies, type ScatterTally } from './tally.ts';
import { faceCellAreas } from './tallyGrid.ts';

/** Flies chunks first … first + count of a problem and adds them up: this thread, or a pool of workers. */
export type ChunkRunner = (
  problem: ScatterProblem,
  first: number,
  count: number,
  control?: Control,
) => Promise<ScatterTally>;

export interface ScatterOptions {
  /** largest standard error wanted of a mirror cell's scattered part, over the mirror's mean (see cellErrorOf), 1 */
  readonly wantedError?: number;
  /** atoms after which to stop in any case; rounded up to whole chunks */
  readonly maxAtoms?: number;
  /** collisions after which to stop, about: what bounds the time in bad vacuum; judged after each round */
  readonly maxCollisions?: number;
  readonly control?: Control;
  readonly run?: ChunkRunner;
}

export interface ScatterResult {
  readonly problem: ScatterProblem;
  readonly tally: ScatterTally;
  readonly summary: ScatterSummary;
  /** whether the wanted error was reached before atoms or collisions ran out */
  readonly isReached: boolean;
}

/** Three percent of the mirror's mean in a single cell; the smooth field through all cells is several times better. */
export const DEFAULT_WANTED_ERROR = 0.03;
export const DEFAULT_MAX_ATOMS = 4_000_000;
/** Half a minute on one core. */
export const DEFAULT_MAX_COLLISIONS = 2e8;
/** Chunks of the first round. */
const FIRST_ROUND = 16;
/** How much more than all so far a round may add. */
const GROWTH = 2;

/** Makes a runner that flies in this thread and keeps the last problem prepared. */
export function createLocalRunner(): ChunkRunner {
  let last: { readonly problem: ScatterProblem; readonly prepared: Promise<PreparedScatter> } | undefined;
  return async (problem, first, count, control) => {
    if (last?.problem !== problem) last = { problem, prepared: prepareScatter(problem) };
    return flyChunks(await last.prepared, first, count, control?.step);
  };
}

/**
 * Follows atoms until the scattered part is known well enough.
 *
 * The length of each round is decided from the counts so far alone, so that the same seed gives the same
 * result on any number of workers. Ends early by throwing from control.step, as all long work does.
 *
 * @throws RangeError if nothing evaporates, the gas is none, or an option is out of range
 */
export async function scatter(problem: ScatterProblem, options: ScatterOptions = {}): Promise<ScatterResult> {
  const { wantedError = DEFAULT_WANTED_ERROR, maxAtoms = DEFAULT_MAX_ATOMS, control } = options;
  const maxCollisions = options.maxCollisions ?? DEFAULT_MAX_COLLISIONS;
  if (!(wantedError > 0)) throw new RangeError(`wantedError: expected a number above 0; found ${wantedError}`);
  if (!(maxAtoms >= 1 && maxAtoms <= 2 ** 40)) throw new RangeError(`maxAtoms: expected 1 to 2^40; found ${maxAtoms}`);
  if (!(maxCollisions > 0)) throw new RangeError(`maxCollisions: expected a number above 0; found ${maxCollisions}`);
  const run = options.run ?? createLocalRunner();
  const areas = faceCellAreas(problem.grid, problem.scene.shape);
  let lastChunk = Math.ceil(maxAtoms / CHUNK);
  let goal = lastChunk;
  let flown = 0;
  let shown = 0;
  let tally: ScatterTally | undefined;
  let error = Infinity;
  while (flown < lastChunk && error > wantedError) {
    const count = roundLength(flown, goal, lastChunk);
    const round = control && {
      step: (share: number) =>
        control.step((shown = Math.max(shown, (flown + share * count) / Math.max(goal, flown + count)))),
    };
    const more = await run(problem, flown, count, round);
    tally = tally ? mergeTallies([tally, more]) : more;
    flown += count;
    error = cellErrorOf(tally, areas);
    lastChunk = Math.min(lastChunk, Math.max(flown, Math.floor((flown * maxCollisions) / tally.collisions)));
    goal = Math.min(lastChunk, Math.ceil(flown * (error / wantedError) ** 2));
  }
  await control?.step(1);
  return { problem, tally: tally!, summary: summarise(problem, tally!), isReached: error <= wantedError };
}

/** Chunks of the next round: what is still missing, but no leap beyond what the error so far can tell. */
function roundLength(flown: number, goal: number, lastChunk: number): number {
  if (flown === 0) return Math.min(FIRST_ROUND, lastChunk);
  return Math.max(1, Math.min(goal - flown, GROWTH * flown, lastChunk - flown));
}
