/** From a plant to its coat: the one path that page, command line and scripts share. */
import { LRUCache } from 'lru-cache';
import type { Fields } from '../field/fields.ts';
import { createOrientedPoints } from '../geometry/orientedPoints.ts';
import { evaporatedMasses, type Plant } from '../plant/plant.ts';
import { contentKey } from '../transport/contentKey.ts';
import { REPLICATES } from '../transport/massRays.ts';
import { keyedPoints, keyedSourcesOf, sceneDataOf } from '../transport/plantRequests.ts';
import { staged } from '../transport/staged.ts';
import type { Control, DepositResult, Transport } from '../transport/transport.ts';
import type { Arrival, Coat } from './coat.ts';
import { depositAtEach, joinDeposits, type Job } from './job.ts';
import { massBudget, roughBudget } from './massBudget.ts';
import { gridFace, refineFor, type FaceMap, type PreparedFace } from './preparedFace.ts';
import { radialProfile } from './radialProfile.ts';
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
export function createEvaluator(transport: Transport = localTransport(), fields: Fields = localFields()): Evaluator {
  const grids = new LRUCache<string, PreparedFace>({ max: 4 });
  const layouts = new LRUCache<string, PreparedFace>({ max: 8 });
  const traces = new LRUCache<string, readonly Float64Array[]>({ max: 8 });

  const makeGrid = async (key: string, plant: Plant, points: number, control?: Control): Promise<PreparedFace> => {
    const grid = await gridFace(plant.shape, points, control);
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

  const mapOf = async (
    grid: PreparedFace,
    job: Job,
    masses: Float64Array,
    wantedError: number | undefined,
  ): Promise<FaceMap & { readonly fieldError: number }> => {
    if (wantedError === undefined) return { ...(await directMap(grid, job, masses)), fieldError: 0 };
    draft ??= await import('./mixedMap.ts');
    const unrefined = async (part: Job, of: Float64Array): Promise<FaceMap> => directMap(grid, part, of, UNREFINED);
    return draft.mixedMap({ grid, job, masses, wantedError, fields, directMap: unrefined });
  };

  const evaluate = async (plant: Plant, options: EvaluateOptions = {}, control?: Control): Promise<Coat> => {
    const { wantedError, withArrival = false } = options;
    const masses = evaporatedMasses(plant);
    const points = options.points ?? DEFAULT_POINTS;
    const key = contentKey(JSON.stringify(plant.shape), points);
    // nothing is waited for before the transport is asked: other threads then work while this one draws the edit
    const grid = grids.get(key) ?? (await makeGrid(key, plant, points, control));
    const scene = sceneDataOf(plant, options.perFreePath);
    const job = { transport, scene, sources: keyedSourcesOf(plant), control };
    const [{ prepared, areal, fieldError }, witness] = await Promise.all([
      mapOf(grid, { ...job, control: staged(control, 0, MAP_SHARE) }, masses, wantedError),
      atWitnesses(plant, job, masses, withArrival),
    ]);
    const shares = await traceAll(job, options, staged(control, MAP_SHARE, 1));
    const forArrival = { withSignature: false, withArrival: true };
    const arrival = withArrival
      ? joinDeposits(await depositAtEach({ ...job, control: undefined }, prepared.blocks, [masses], forArrival))
      : null;
    await control?.step(1);
    const coat = coatOf(plant, { masses, prepared, shares, areal, fieldError, arrival, witness });
    await control?.step(1);
    return coat;
  };

  return { evaluate };
}

/** Code of the map on few points, which the first coat does without. */
let draft: typeof import('./mixedMap.ts') | undefined;

/** A draft does not follow shadow edges between the points of the grid: it says so in its errors. */
const UNREFINED = 0;

/** A transport in this thread, by code that is loaded when it is first asked: a page with workers does without. */
function localTransport(): Transport {
  let made: Promise<Transport> | undefined;
  const own = async (): Promise<Transport> =>
    (made ??= import('../transport/localTransport.ts').then(({ createLocalTransport }) => createLocalTransport()));
  return {
    deposit: async (...asked) => (await own()).deposit(...asked),
    trace: async (...asked) => (await own()).trace(...asked),
  };
}

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

/** Sums alone. */
const FOR_SUMS = { withSignature: false, withArrival: false } as const;

/** What arrives at the witnesses. */
async function atWitnesses(
  { witnesses }: Plant,
  job: Job,
  masses: Float64Array,
  withArrival: boolean,
): Promise<DepositResult> {
  const points = createOrientedPoints(witnesses.length);
  witnesses.forEach(({ position, normal }, i) => {
    points.position.set(position, 3 * i);
    points.normal.set(normal, 3 * i);
  });
  const wanted = { withSignature: false, withArrival };
  const at = witnesses.length > 0 ? [keyedPoints(points, false)] : [];
  const [result] = await depositAtEach({ ...job, control: undefined }, at, [masses], wanted);
  return result ?? { sums: [new Float64Array()], signature: null, arrival: null };
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
  const thickness = new Float64Array(areal.length);
  for (let i = 0; i < thickness.length; i++) thickness[i] = toThickness(areal[i]!);
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
