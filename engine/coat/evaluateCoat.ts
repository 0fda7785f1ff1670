/** From a plant to its coat: the one path that page, command line and scripts share. */
import { LRUCache } from 'lru-cache';
import type { Fields } from '../field/fields.ts';
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
import { mixedCells } from './refineAtShadows.ts';
import { massOnFace, statisticsOf, widened } from './statistics.ts';

export interface EvaluateOptions {
  /** wanted number of map points before refinement */
  readonly points?: number;
  /** rays of the mass budget, all filaments and replicates together; without any, the budget knows the mirror's share only */
  readonly rays?: number;
  readonly seed?: number;
  /**
   * How far the thickness may be from exact anywhere, over the mean, so that what nothing hides can be computed on few
   * points; without it every filament is summed at every point
   */
  readonly wantedError?: number;
  /** collisions per length of way in residual gas, 1/m: the coat is then what arrives straight; wants `rays: 0` */
  readonly perFreePath?: number;
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

/** Makes an evaluator that remembers grids and layouts, so that a changed charge costs one sum. */
export function createEvaluator(
  transport: Transport = createLocalTransport(),
  fields: Fields = localFields(),
): Evaluator {
  const grids = new LRUCache<string, PreparedFace>({ max: 4 });
  const layouts = new LRUCache<string, PreparedFace>({ max: 8 });
  const traces = new LRUCache<string, readonly Float64Array[]>({ max: 8 });

  const gridOf = async (plant: Plant, points: number, control?: Control): Promise<PreparedFace> => {
    const key = contentKey(JSON.stringify(plant.shape), points);
    const grid = grids.get(key) ?? (await gridFace(plant.shape, points, control));
    grids.set(key, grid);
    return grid;
  };

  /** Every filament of the job summed at every point, on a face refined for them as deep as is said. */
  const directMap = async (grid: PreparedFace, job: Job, masses: Float64Array, depth?: number): Promise<FaceMap> => {
    if (job.sources.length === 0) return { prepared: grid, areal: new Float64Array(grid.face.points.count) };
    const key = contentKey(
      grid.blocks[0]?.key ?? '',
      job.scene.key,
      ...job.sources.map((source) => source.key),
      depth ?? '',
    );
    const prepared = layouts.get(key);
    if (prepared) {
      const results = await depositAtEach(job, prepared.blocks, [masses], FOR_SUMS);
      return { prepared, areal: joinDeposits(results).sums[0]! };
    }
    const made = await refineFor(grid, job, masses, depth);
    layouts.set(key, made.prepared);
    return made;
  };

  /** A smooth field less what obstacles hide of it, and directly what no field describes. */
  const mixedMap = async (
    grid: PreparedFace,
    job: Job,
    masses: Float64Array,
    wantedError: number,
  ): Promise<FaceMap & { readonly fieldError: number }> => {
    const { addFieldTo, clearSources, hasObstacles, restOf } = await import('./smoothPart.ts');
    const clear = clearSources(job.scene, job.sources);
    const sources = clear.map((f) => job.sources[f]!);
    const charges = Float64Array.from(clear, (f) => masses[f]!);
    const field = await fields.solve({ scene: job.scene, sources, masses: charges, wantedError });
    for (const f of field.rough) charges[f] = 0;
    const rest = restOf(job.sources.length, clear, field.rough);
    const [hidden, { prepared, areal }] = await Promise.all([
      hasObstacles(job.scene) ? hiddenAt(grid, { ...job, sources }, charges) : null,
      directMap(
        grid,
        { ...job, sources: rest.map((f) => job.sources[f]!) },
        Float64Array.from(rest, (f) => masses[f]!),
        UNREFINED,
      ),
    ]);
    const shaded = mixedCells(grid.face.cells, hidden?.signature ?? null);
    return {
      prepared: { ...prepared, mixed: [...new Set([...prepared.mixed, ...shaded])] },
      areal: addFieldTo(areal, field, hidden?.sums[0] ?? null, grid.face),
      fieldError: field.error,
    };
  };

  /** Where every filament's vapour goes; the rays are shared out evenly over all sub-sources. */
  const traceAll = async (
    job: Job,
    { rays: wantedRays = DEFAULT_RAYS, seed = DEFAULT_SEED }: EvaluateOptions,
    control: Control | undefined,
  ): Promise<readonly Float64Array[] | null> => {
    if (wantedRays === 0) return null;
    const key = contentKey(job.scene.key, ...job.sources.map((source) => source.key), wantedRays, seed);
    const found = traces.get(key);
    if (found) return found;
    const subSources = job.sources.reduce((sum, { source }) => sum + source.count, 0);
    const rays = Math.max(1, Math.round(wantedRays / REPLICATES / Math.max(1, subSources)));
    const shares = await job.transport.trace({ scene: job.scene, sources: job.sources, rays, seed }, control);
    traces.set(key, shares);
    return shares;
  };

  const evaluate = async (plant: Plant, options: EvaluateOptions = {}, control?: Control): Promise<Coat> => {
    const { wantedError, withArrival = false } = options;
    const masses = evaporatedMasses(plant);
    const grid = await gridOf(plant, options.points ?? DEFAULT_POINTS, control);
    const job = { transport, scene: sceneDataOf(plant, options.perFreePath), sources: keyedSourcesOf(plant), control };
    const map = { ...job, control: staged(control, 0, MAP_SHARE) };
    const { prepared, areal, fieldError } =
      wantedError === undefined
        ? { ...(await directMap(grid, map, masses)), fieldError: 0 }
        : await mixedMap(grid, map, masses, wantedError);
    const shares = await traceAll(job, options, staged(control, MAP_SHARE, 1));
    const blocks = [...(withArrival ? prepared.blocks : []), witnessPoints(plant)];
    const results = await depositAtEach({ ...job, control: undefined }, blocks, [masses], {
      withSignature: false,
      withArrival,
    });
    const arrival = withArrival ? joinDeposits(results.slice(0, -1)) : null;
    return coatOf(plant, { masses, prepared, shares, areal, fieldError, arrival, witness: results.at(-1)! });
  };

  return { evaluate };
}

/** A draft does not follow shadow edges between the points of the grid: it says so in its errors. */
const UNREFINED = 0;

/** Fields computed in this thread, by code that is loaded when the first one is asked for. */
function localFields(): Fields {
  let made: Promise<Fields> | undefined;
  return {
    solve: async (request) => {
      made ??= import('../field/fields.ts').then(({ createLocalFields }) => createLocalFields());
      return (await made).solve(request);
    },
  };
}

/** What obstacles hide of some filaments' deposit. */
async function hiddenAt(grid: PreparedFace, { transport, scene, sources, control }: Job, masses: Float64Array) {
  const request = { scene, sources, blocks: grid.blocks, mixes: [masses], part: 'hidden' } as const;
  return joinDeposits(await transport.deposit({ ...request, withSignature: true, withArrival: false }, control));
}

/** Sums alone. */
const FOR_SUMS = { withSignature: false, withArrival: false } as const;

/** Mass per area over a face. */
interface FaceMap {
  readonly prepared: PreparedFace;
  /** [points] kg/m² */
  readonly areal: Float64Array;
}

function witnessPoints(plant: Plant): KeyedPoints {
  const points = createOrientedPoints(plant.witnesses.length);
  plant.witnesses.forEach(({ position, normal }, i) => {
    points.position.set(position, 3 * i);
    points.normal.set(normal, 3 * i);
  });
  return keyedPoints(points, false);
}

/** All that a coat is made of. */
interface Parts extends FaceMap {
  readonly masses: Float64Array;
  /** [filaments] see traceBudget; null without rays */
  readonly shares: readonly Float64Array[] | null;
  /** bound of what few points leave out, kg/m² */
  readonly fieldError: number;
  /** sums of arrival angles, if asked for */
  readonly arrival: DepositResult | null;
  readonly witness: DepositResult;
}

function coatOf(plant: Plant, { masses, prepared, shares, areal, fieldError, arrival, witness }: Parts): Coat {
  const { face, weights, mixed } = prepared;
  const { sticking, density, tolerance } = plant.film;
  const { value, error } = massOnFace(weights, mixed, areal);
  const onFace = { value, error: error + fieldError * weights.all.fineTotal };
  const toThickness = (mass: number): number => (mass * sticking) / density;
  const thickness = areal.map(toThickness);
  const budget = shares
    ? massBudget(plant, masses, onFace, shares, witness.sums[0]!)
    : roughBudget(plant, masses, onFace);
  const perEvaporated = budget.evaporated > 0 ? sticking / budget.evaporated : 0;
  const collection = { value: onFace.value * perEvaporated, error: onFace.error * perEvaporated };
  const statistics = statisticsOf(face, weights, mixed, thickness, tolerance, collection);
  return {
    plant,
    face,
    thickness,
    statistics: fieldError > 0 ? widened(statistics, toThickness(fieldError)) : statistics,
    profile: radialProfile(face, thickness),
    witnessThickness: witness.sums[0]!.map(toThickness),
    budget,
    arrival: arrival && arrivalOf(arrival, witness),
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
