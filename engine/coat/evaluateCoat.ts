/** From a plant to its coat: the one path that page, command line and scripts share. */
import { LRUCache } from 'lru-cache';
import { createOrientedPoints } from '../geometry/orientedPoints.ts';
import { evaporatedMasses, type Plant } from '../plant/plant.ts';
import { contentKey } from '../transport/contentKey.ts';
import { createLocalTransport } from '../transport/localTransport.ts';
import { REPLICATES } from '../transport/massRays.ts';
import { keyedPoints, keyedSourcesOf, sceneDataOf } from '../transport/plantRequests.ts';
import { staged } from '../transport/staged.ts';
import type { Control, DepositResult, KeyedPoints, Transport } from '../transport/transport.ts';
import type { Arrival, Coat } from './coat.ts';
import { depositAtEach, joinDeposits, type Job } from './job.ts';
import { massBudget, roughBudget } from './massBudget.ts';
import { gridFace, refineFor, type PreparedFace } from './preparedFace.ts';
import { radialProfile } from './radialProfile.ts';
import { massOnFace, statisticsOf } from './statistics.ts';

export interface EvaluateOptions {
  /** wanted number of map points before refinement */
  readonly points?: number;
  /** rays of the mass budget, all filaments and replicates together; without any, the budget knows the mirror's share only */
  readonly rays?: number;
  readonly seed?: number;
  /** whether to work out arrival angles too */
  readonly withArrival?: boolean;
}

export const DEFAULT_POINTS = 20_000;
const DEFAULT_RAYS = 2 ** 17;
const DEFAULT_SEED = 1;
/** Share of the progress that the map takes; the rest is the budget's. */
const MAP_SHARE = 0.9;

export interface Evaluator {
  readonly evaluate: (plant: Plant, options?: EvaluateOptions, control?: Control) => Promise<Coat>;
}

/** A layout worked out: its points, and where each filament's vapour goes. */
interface Layout {
  readonly prepared: PreparedFace;
  /** [filaments] see traceBudget; null without rays */
  readonly shares: readonly Float64Array[] | null;
}

/** Makes an evaluator that remembers grids and layouts, so that a changed charge costs one sum. */
export function createEvaluator(transport: Transport = createLocalTransport()): Evaluator {
  const grids = new LRUCache<string, PreparedFace>({ max: 4 });
  const layouts = new LRUCache<string, Layout>({ max: 8 });

  const gridOf = async (plant: Plant, points: number, control?: Control): Promise<PreparedFace> => {
    const key = contentKey(JSON.stringify(plant.shape), points);
    const grid = grids.get(key) ?? (await gridFace(plant.shape, points, control));
    grids.set(key, grid);
    return grid;
  };

  const evaluate = async (plant: Plant, options: EvaluateOptions = {}, control?: Control): Promise<Coat> => {
    const masses = evaporatedMasses(plant);
    const grid = await gridOf(plant, options.points ?? DEFAULT_POINTS, control);
    const job = { transport, scene: sceneDataOf(plant), sources: keyedSourcesOf(plant), control };
    const sourceKeys = job.sources.map(({ key }) => key);
    const key = contentKey(
      grid.blocks[0]?.key ?? '',
      job.scene.key,
      ...sourceKeys,
      options.rays ?? DEFAULT_RAYS,
      options.seed ?? DEFAULT_SEED,
    );
    const map = { ...job, control: staged(control, 0, MAP_SHARE) };
    const witnesses = witnessPoints(plant);
    const layout = layouts.get(key);
    if (layout) {
      const blocks = [...layout.prepared.blocks, witnesses];
      const results = await depositAtEach(map, blocks, [masses], wantedOf(options));
      return coatOf(plant, masses, layout, joinDeposits(results.slice(0, -1)), results.at(-1)!);
    }
    const { prepared, areal } = await refineFor(grid, map, masses);
    const shares = await traceAll(job, options, staged(control, MAP_SHARE, 1));
    layouts.set(key, { prepared, shares });
    const blocks = options.withArrival ? [...prepared.blocks, witnesses] : [witnesses];
    const results = await depositAtEach({ ...job, control: undefined }, blocks, [masses], wantedOf(options));
    const deposit = options.withArrival
      ? joinDeposits(results.slice(0, -1))
      : { sums: [areal], signature: null, arrival: null };
    return coatOf(plant, masses, { prepared, shares }, deposit, results.at(-1)!);
  };

  return { evaluate };
}

function wantedOf({ withArrival = false }: EvaluateOptions): { withSignature: false; withArrival: boolean } {
  return { withSignature: false, withArrival };
}

/** Where every filament's vapour goes; the rays are shared out evenly over all sub-sources. */
async function traceAll(
  job: Job,
  options: EvaluateOptions,
  control: Control | undefined,
): Promise<readonly Float64Array[] | null> {
  if (options.rays === 0) return null;
  const subSources = job.sources.reduce((sum, { source }) => sum + source.count, 0);
  const rays = Math.max(1, Math.round((options.rays ?? DEFAULT_RAYS) / REPLICATES / Math.max(1, subSources)));
  const request = { scene: job.scene, sources: job.sources, rays, seed: options.seed ?? DEFAULT_SEED };
  return job.transport.trace(request, control);
}

function witnessPoints(plant: Plant): KeyedPoints {
  const points = createOrientedPoints(plant.witnesses.length);
  plant.witnesses.forEach(({ position, normal }, i) => {
    points.position.set(position, 3 * i);
    points.normal.set(normal, 3 * i);
  });
  return keyedPoints(points, false);
}

function coatOf(
  plant: Plant,
  masses: Float64Array,
  { prepared, shares }: Layout,
  map: DepositResult,
  witness: DepositResult,
): Coat {
  const { face, weights, mixed } = prepared;
  const { sticking, density, tolerance } = plant.film;
  const areal = map.sums[0]!;
  const onFace = massOnFace(weights, mixed, areal);
  const toThickness = (value: number): number => (value * sticking) / density;
  const thickness = areal.map(toThickness);
  const budget = shares
    ? massBudget(plant, masses, onFace, shares, witness.sums[0]!)
    : roughBudget(plant, masses, onFace);
  const perEvaporated = budget.evaporated > 0 ? sticking / budget.evaporated : 0;
  const collection = { value: onFace.value * perEvaporated, error: onFace.error * perEvaporated };
  return {
    plant,
    face,
    thickness,
    statistics: statisticsOf(face, weights, mixed, thickness, tolerance, collection),
    profile: radialProfile(face, thickness),
    witnessThickness: witness.sums[0]!.map(toThickness),
    budget,
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
