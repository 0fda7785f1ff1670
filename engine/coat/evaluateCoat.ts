/** From a plant to its coat: the one path that page, command line and scripts share. */
import { LRUCache } from 'lru-cache';
import { createFace, refineFace, type Cell, type Face } from '../geometry/face.ts';
import { createOrientedPoints } from '../geometry/orientedPoints.ts';
import { evaporatedMasses, type Plant } from '../plant/plant.ts';
import { contentKey } from '../transport/contentKey.ts';
import { createLocalTransport } from '../transport/localTransport.ts';
import { keyedPoints, keyedSourcesOf, sceneDataOf } from '../transport/plantRequests.ts';
import type { Control, DepositResult, KeyedPoints, KeyedSource, SceneData, Transport } from '../transport/transport.ts';
import type { Arrival, Coat } from './coat.ts';
import { faceWeights, type FaceWeights } from './faceWeights.ts';
import { massBudget } from './massBudget.ts';
import { radialProfile } from './radialProfile.ts';
import { cellsToRefine, MAX_DEPTH, mixedCells } from './refineAtShadows.ts';
import { massOnFace, statisticsOf } from './statistics.ts';

export interface EvaluateOptions {
  /** wanted number of map points before refinement */
  readonly points?: number;
  /** rays of the mass budget, all filaments and replicates together */
  readonly rays?: number;
  readonly seed?: number;
  /** whether to work out arrival angles too */
  readonly withArrival?: boolean;
}

export const DEFAULT_POINTS = 20_000;
const DEFAULT_RAYS = 2 ** 17;
const DEFAULT_SEED = 1;
/** Refined points allowed for each point of the grid. */
const REFINED_SHARE = 1.5;

/** What refining needs of a deposit beside the sums. */
const FOR_REFINING = { withSignature: true, withArrival: false } as const;

/** A face refined for one layout, with everything about it that does not depend on the charges. */
interface PreparedFace {
  readonly face: Face;
  readonly weights: FaceWeights;
  readonly mixed: readonly Cell[];
  /** the grid's points, then those of each refinement */
  readonly blocks: readonly KeyedPoints[];
}

interface Job {
  readonly transport: Transport;
  readonly scene: SceneData;
  readonly sources: readonly KeyedSource[];
  readonly control: Control | undefined;
}

export interface Evaluator {
  readonly evaluate: (plant: Plant, options?: EvaluateOptions, control?: Control) => Promise<Coat>;
}

/** Makes an evaluator that remembers grids and refinements, so that a changed charge costs one sum. */
export function createEvaluator(transport: Transport = createLocalTransport()): Evaluator {
  const grids = new LRUCache<string, PreparedFace>({ max: 4 });
  const prepared = new LRUCache<string, PreparedFace>({ max: 8 });

  const gridOf = (plant: Plant, points: number): PreparedFace => {
    const key = contentKey(JSON.stringify(plant.shape), points);
    const found = grids.get(key);
    if (found) return found;
    const face = createFace(plant.shape, points);
    const made = { face, weights: faceWeights(face), mixed: [], blocks: [keyedPoints(face.points)] };
    grids.set(key, made);
    return made;
  };

  const evaluate = async (plant: Plant, options: EvaluateOptions = {}, control?: Control): Promise<Coat> => {
    const job: Job = {
      transport,
      scene: sceneDataOf(plant),
      sources: keyedSourcesOf(plant),
      control: staged(control, 0, 0.8),
    };
    const grid = gridOf(plant, options.points ?? DEFAULT_POINTS);
    const key = contentKey(grid.blocks[0]?.key ?? '', job.scene.key, ...job.sources.map((source) => source.key));
    let ready = prepared.get(key);
    if (!ready) {
      ready = await refine(grid, job);
      prepared.set(key, ready);
    }
    return coatOn(ready, plant, job, options, staged(control, 0.8, 1));
  };

  return { evaluate };
}

/** A control whose steps fill a part of the caller's progress. */
function staged(control: Control | undefined, from: number, to: number): Control | undefined {
  return control && { step: (share) => control.step(from + (to - from) * share) };
}

/** Deposits at several blocks of points, joined in order. */
async function depositAt(
  job: Job,
  blocks: readonly KeyedPoints[],
  mix: Float64Array,
  wanted: { readonly withSignature: boolean; readonly withArrival: boolean },
): Promise<DepositResult> {
  const results: DepositResult[] = [];
  for (const [b, points] of blocks.entries()) {
    const control = staged(job.control, b / blocks.length, (b + 1) / blocks.length);
    const request = { scene: job.scene, sources: job.sources, points, mixes: [mix], ...wanted };
    results.push(await job.transport.deposit(request, control));
  }
  return joinResults(results);
}

function joinResults(results: readonly DepositResult[]): DepositResult {
  const [first] = results;
  if (first && results.length === 1) return first;
  const join = (parts: readonly Float64Array[]): Float64Array => {
    const joined = new Float64Array(parts.reduce((sum, part) => sum + part.length, 0));
    let o = 0;
    for (const part of parts) {
      joined.set(part, o);
      o += part.length;
    }
    return joined;
  };
  const lengths = results.map(({ sums }) => sums[0]?.length ?? 0);
  const signature = results.some((result) => result.signature)
    ? Uint32Array.from(results.flatMap((result, i) => [...(result.signature ?? new Uint32Array(lengths[i] ?? 0))]))
    : null;
  const arrivals = results.flatMap(({ arrival }) => (arrival ? [arrival] : []));
  const arrival =
    arrivals.length === results.length
      ? { angle: join(arrivals.map(({ angle }) => angle)), grazing: join(arrivals.map(({ grazing }) => grazing)) }
      : null;
  return { sums: [join(results.map(({ sums }) => sums[0] ?? new Float64Array(0)))], signature, arrival };
}

/** Halves cells at shadow edges, level by level, looking at equal charges so that only the layout counts. */
async function refine(grid: PreparedFace, job: Job): Promise<PreparedFace> {
  if (job.sources.length === 0) return grid;
  const equal = new Float64Array(job.sources.length).fill(1 / job.sources.length);
  let { face } = grid;
  const blocks = [...grid.blocks];
  let known = await depositAt(job, blocks, equal, FOR_REFINING);
  let room = Math.floor((REFINED_SHARE * face.points.count) / 25);
  for (let level = 0; level < MAX_DEPTH && room > 0; level++) {
    const split = cellsToRefine(face, known.sums[0]!, known.signature, room);
    if (split.length === 0) break;
    room -= split.length;
    const finer = refineFace(face, split);
    face = finer.face;
    blocks.push(keyedPoints(finer.added));
    known = joinResults([known, await depositAt(job, blocks.slice(-1), equal, FOR_REFINING)]);
  }
  const mixed = mixedCells(face.cells, known.signature);
  if (face === grid.face) return { ...grid, mixed };
  return { face, weights: faceWeights(face), mixed, blocks };
}

function witnessPoints(plant: Plant): KeyedPoints {
  const points = createOrientedPoints(plant.witnesses.length);
  plant.witnesses.forEach(({ position, normal }, i) => {
    points.position.set(position, 3 * i);
    points.normal.set(normal, 3 * i);
  });
  return keyedPoints(points);
}

async function coatOn(
  { face, weights, mixed, blocks }: PreparedFace,
  plant: Plant,
  job: Job,
  options: EvaluateOptions,
  control: Control | undefined,
): Promise<Coat> {
  const masses = evaporatedMasses(plant);
  const wanted = { withSignature: false, withArrival: options.withArrival ?? false };
  const work = { ...job, control };
  const map = await depositAt(work, blocks, masses, wanted);
  const witness = await depositAt(work, [witnessPoints(plant)], masses, wanted);
  const perSubSource = Math.max(
    1,
    Math.round(
      (options.rays ?? DEFAULT_RAYS) /
        16 /
        Math.max(
          1,
          plant.filaments.reduce((sum, { source }) => sum + source.count, 0),
        ),
    ),
  );
  const shares = await job.transport.trace(
    { scene: job.scene, sources: job.sources, rays: perSubSource, seed: options.seed ?? DEFAULT_SEED },
    control,
  );
  const areal = map.sums[0]!;
  const onFace = massOnFace(weights, mixed, areal);
  const { sticking, density, tolerance } = plant.film;
  const toThickness = (value: number): number => (value * sticking) / density;
  const thickness = areal.map(toThickness);
  const evaporated = masses.reduce((sum, mass) => sum + mass, 0);
  const perEvaporated = evaporated > 0 ? sticking / evaporated : 0;
  const collection = { value: onFace.value * perEvaporated, error: onFace.error * perEvaporated };
  return {
    plant,
    face,
    thickness,
    statistics: statisticsOf(face, weights, mixed, thickness, tolerance, collection),
    profile: radialProfile(face, thickness),
    witnessThickness: witness.sums[0]!.map(toThickness),
    budget: massBudget(plant, masses, onFace, shares, witness.sums[0]!),
    arrival: map.arrival && witness.arrival && arrivalOf(map, witness),
  };
}

function arrivalOf(map: DepositResult, witness: DepositResult): Arrival {
  const over = (moment: Float64Array | undefined, sum: Float64Array): Float64Array =>
    Float64Array.from(sum, (value, i) => (moment?.[i] ?? NaN) / value);
  return {
    meanAngle: over(map.arrival?.angle, map.sums[0]!),
    grazingShare: over(map.arrival?.grazing, map.sums[0]!),
    witnessAngle: over(witness.arrival?.angle, witness.sums[0]!),
  };
}
