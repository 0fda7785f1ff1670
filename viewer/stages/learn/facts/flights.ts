/** Atoms followed one by one: the flights that the engine's own calculation counts. */
import type { FilamentSource } from '../../../../engine/emission/filamentSource.ts';
import { scatter } from '../../../../engine/gas/scatter.ts';
import { scatterProblemOf, type ScatterProblem } from '../../../../engine/gas/scatterProblem.ts';
import type { Counted } from '../../../../engine/gas/scatterSummary.ts';
import { flyTracks, type Track } from '../../../../engine/gas/tracks.ts';
import type { Plant } from '../../../../engine/index.ts';
import { FACE, WALL } from '../../../../engine/transport/massRays.ts';
import { residualGas } from '../../vacuum/gas/residualGas.ts';
import type { Tools } from '../lesson.ts';

/** Atoms between two pauses. */
const BATCH = 25;
const SEED = 1;

export type Landing = 'mirror' | 'wall' | 'elsewhere';

export interface Flight {
  /** [3 · points] m */
  readonly points: Float64Array;
  /** m, all pieces together */
  readonly length: number;
  readonly collisions: number;
  readonly landing: Landing;
}

export interface FlightOptions {
  /** Pa */
  readonly pressure: number;
  readonly count: number;
  /** the only source; all filaments unless given */
  readonly source?: FilamentSource;
}

/** A shot in the tank's own gas at a pressure, of all filaments or of one source. */
function shotAt(plant: Plant, { pressure, source }: FlightOptions): ScatterProblem {
  const problem = scatterProblemOf(plant, { gas: residualGas(plant.vacuum, pressure), seed: SEED });
  return source ? { ...problem, sources: [source], masses: Float64Array.of(1) } : problem;
}

function lengthOf(points: Float64Array): number {
  let length = 0;
  for (let o = 3; o < points.length; o += 3)
    length += Math.hypot(points[o]! - points[o - 3]!, points[o + 1]! - points[o - 2]!, points[o + 2]! - points[o - 1]!);
  return length;
}

function flightOf({ points, collisions, place }: Track): Flight {
  const landing = place === FACE ? 'mirror' : place === WALL ? 'wall' : 'elsewhere';
  return { points, length: lengthOf(points), collisions, landing };
}

/** Follows atoms, some at a time; each batch has the next seed. */
export async function fly(
  plant: Plant,
  options: FlightOptions,
  { step }: Pick<Tools, 'step'>,
): Promise<readonly Flight[]> {
  const { count } = options;
  const problem = shotAt(plant, options);
  const flown: Flight[] = [];
  while (flown.length < count) {
    const seed = SEED + flown.length / BATCH;
    const tracks = await flyTracks({ ...problem, seed }, Math.min(BATCH, count - flown.length));
    flown.push(...tracks.map(flightOf));
    await step(flown.length / count);
  }
  return flown;
}

/** Share of the vapour that reaches the mirror at a pressure, from many atoms. */
export async function shareOnMirror(
  plant: Plant,
  options: FlightOptions,
  { step, fly: run }: Pick<Tools, 'step' | 'fly'>,
): Promise<Counted> {
  const { summary } = await scatter(shotAt(plant, options), {
    maxAtoms: options.count,
    wantedError: Number.MIN_VALUE,
    control: { step },
    ...(run && { run }),
  });
  const [straight, astray] = [summary.ballisticOnMirror, summary.scatteredOnMirror];
  return {
    value: straight.value + astray.value,
    standardError: Math.hypot(straight.standardError, astray.standardError),
  };
}

/** Part of a flight from its start, by share of its length, as the corners of a line: [3 · points] m. */
export function partOfFlight({ points, length }: Flight, share: number): number[] {
  const part = [...points.subarray(0, 3)];
  let left = share * length;
  for (let o = 3; o < points.length && left > 0; o += 3) {
    const [dx, dy, dz] = [0, 1, 2].map((k) => points[o + k]! - points[o - 3 + k]!) as [number, number, number];
    const piece = Math.hypot(dx, dy, dz);
    const t = piece > 0 ? Math.min(1, left / piece) : 1;
    part.push(points[o - 3]! + t * dx, points[o - 2]! + t * dy, points[o - 1]! + t * dz);
    left -= piece;
  }
  return part;
}

/** Share of a flight's length at its next corner after a share; 1 at its end. */
export function nextCorner({ points, length }: Flight, share: number): number {
  let run = 0;
  for (let o = 3; o < points.length; o += 3) {
    run += Math.hypot(points[o]! - points[o - 3]!, points[o + 1]! - points[o - 2]!, points[o + 2]! - points[o - 1]!);
    if (run / length > share + 1e-9) return Math.min(1, run / length);
  }
  return 1;
}

/** Where flights landed on the mirror: root of the mean square distance from their middle, m; NaN for fewer than two. */
export function spotSize(flights: readonly Flight[]): number {
  const ends = flights.filter(({ landing }) => landing === 'mirror').map(({ points }) => points.subarray(-3, -1));
  if (ends.length < 2) return NaN;
  const mean = [0, 1].map((k) => ends.reduce((sum, end) => sum + end[k]!, 0) / ends.length) as [number, number];
  const squares = ends.reduce((sum, end) => sum + (end[0]! - mean[0]) ** 2 + (end[1]! - mean[1]) ** 2, 0);
  return Math.sqrt(squares / ends.length);
}

/** Mean length of the flights that reached the mirror straight, m. */
export function meanThrow(flights: readonly Flight[]): number {
  const straight = flights.filter(({ landing, collisions }) => landing === 'mirror' && collisions === 0);
  if (straight.length === 0)
    throw new RangeError('no atom reaches the mirror straight in this vacuum; choose the teaching tank');
  return straight.reduce((sum, { length }) => sum + length, 0) / straight.length;
}
