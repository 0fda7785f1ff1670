/** Transport computed in the calling thread, with a bounded store of columns. */
import { LRUCache } from 'lru-cache';
import { glassOf } from '../geometry/glass.ts';
import type { Triangles } from '../geometry/stl.ts';
import { casterCount, type MeshSolid, type Scene } from '../geometry/scene.ts';
import { computeArrival, computeColumns, computeHidden, type ArrivalMoments, type Column } from './column.ts';
import { createPlainKernel, type DepositKernel } from './depositKernel.ts';
import { traceBudget } from './massRays.ts';
import { createRecycler } from './recycler.ts';
import { staged } from './staged.ts';
import type {
  Control,
  DepositPart,
  DepositRequest,
  DepositResult,
  KeyedPoints,
  KeyedSource,
  SceneData,
  TraceRequest,
  Transport,
} from './transport.ts';
import { createVisibility, type Visibility } from './visibility.ts';

/** Bytes of columns that one thread keeps unless told otherwise. */
const DEFAULT_STORE_BYTES = 96 * 2 ** 20;

/** Share of the store's bytes that may wait to be written over. */
const SPARE_SHARE = 1 / 4;

/** Columns that are summed, and computed, together. */
const BATCH = 4;

type Kept = {
  readonly column?: Column;
  readonly arrival?: ArrivalMoments;
  readonly shares?: Float64Array;
  readonly partial?: Float64Array;
};

function keptBytes({ column, arrival, shares, partial }: Kept): number {
  const bytes =
    (column?.deposit.byteLength ?? 0) +
    (column?.signature?.byteLength ?? 0) +
    (arrival ? 2 * arrival.angle.byteLength : 0) +
    (shares?.byteLength ?? 0) +
    (partial?.byteLength ?? 0);
  return bytes + 256;
}

/** Builds meshes only where there are some, so that their library is loaded only then. */
async function buildMeshes(meshes: readonly Triangles[]): Promise<MeshSolid[]> {
  if (meshes.length === 0) return [];
  const { buildMeshSolid } = await import('../geometry/mesh.ts');
  return meshes.map(buildMeshSolid);
}

/** The scene of a plant's data, ready for rays. */
export async function buildScene(data: SceneData): Promise<Scene> {
  return { glass: glassOf(data.shape), tank: data.tank, solids: data.solids, meshes: await buildMeshes(data.meshes) };
}

/**
 * Makes a transport that computes in this thread.
 *
 * Columns are kept by the content that determines them (source, points, scene), least recently used
 * out first, so that a changed charge recomputes none and a moved filament one. What does not fit is
 * computed, added and forgotten.
 *
 * @param storeBytes bound of the store
 * @param kernel what sums the deposits; a SIMD one must not be shared with another transport
 */
export function createLocalTransport(
  storeBytes = DEFAULT_STORE_BYTES,
  kernel: DepositKernel = createPlainKernel(),
): Transport {
  const recycler = createRecycler(SPARE_SHARE * storeBytes);
  const kept = new LRUCache<string, Kept>({
    maxSize: storeBytes,
    maxEntrySize: storeBytes,
    sizeCalculation: keptBytes,
    dispose: ({ column, partial }) => {
      if (column) recycler.giveBack(column.deposit);
      if (partial) recycler.giveBack(partial);
    },
  });
  let current:
    | { readonly key: string; readonly scene: Scene; readonly onFace: Visibility; readonly anywhere: Visibility }
    | undefined;

  const inScene = async (data: SceneData): Promise<NonNullable<typeof current>> => {
    if (current?.key !== data.key) {
      const scene = await buildScene(data);
      current = {
        key: data.key,
        scene,
        onFace: createVisibility(scene, true, data.perFreePath),
        anywhere: createVisibility(scene, false, data.perFreePath),
      };
    }
    return current;
  };
  const keep = <K extends keyof Kept>(
    key: string,
    part: K,
    compute: () => NonNullable<Kept[K]>,
  ): NonNullable<Kept[K]> => {
    const found = kept.get(key)?.[part];
    if (found) return found;
    const made = compute();
    kept.set(key, { [part]: made });
    return made;
  };

  /** Columns of a group: the kept ones, and the missing ones computed together. The caller lets go of them. */
  const columnsOf = (
    group: readonly KeyedSource[],
    points: KeyedPoints,
    scene: SceneData,
    visibility: Visibility,
    part: DepositPart,
  ): Column[] => {
    const places = group.map(({ key }) => `${key}/${points.key}/${scene.key}/${part}`);
    const found = places.map((place) => kept.get(place)?.column);
    const missing = group.filter((_, k) => !found[k]);
    const made =
      part === 'hidden'
        ? missing.map(({ source }) => computeHidden(source, points.points, visibility, kernel))
        : missing.length === 0
          ? []
          : computeColumns(
              missing.map(({ source }) => source),
              points.points,
              visibility,
              kernel,
              recycler.take,
            );
    // held before they are kept: keeping one may push out another
    const columns = found.map((column) => column ?? made.shift()!);
    for (const { deposit } of columns) recycler.hold(deposit);
    columns.forEach((column, k) => {
      if (!found[k]) kept.set(places[k]!, { column });
    });
    return columns;
  };

  const depositAtBlock = async (
    request: DepositRequest,
    block: KeyedPoints,
    visibility: Visibility,
    control: Control | undefined,
  ): Promise<DepositResult> => {
    const { points, key } = block;
    const part = request.part ?? 'arriving';
    const sums = request.mixes.map(() => new Float64Array(points.count));
    const arrival = request.withArrival
      ? { angle: new Float64Array(points.count), grazing: new Float64Array(points.count) }
      : null;
    const batch: Batch = { columns: [], iSources: [] };
    const letGo = (): void => {
      for (const column of batch.columns) recycler.letGo(column);
      batch.columns.length = 0;
      batch.iSources.length = 0;
    };
    // sums of a few columns are kept: a changed charge makes one anew and adds up the others
    const flush = (): void => {
      if (batch.columns.length === 0) return;
      request.mixes.forEach((mix, m) => {
        const factors = batch.iSources.map((f) => mix[f]!);
        const make = (): Float64Array => weightedSum(recycler.take(points.count), batch.columns, factors);
        const place = `${batch.iSources.map((f) => request.sources[f]!.key).join()}/${key}/${request.scene.key}/${part}/${factors.join()}`;
        addInto(sums[m]!, keep(place, 'partial', make));
      });
      letGo();
    };
    let signature: Uint32Array | null = null;
    // filaments that shadows make slow are computed one by one, so that the work can be stopped in between
    const groupSize = casterCount(visibility.scene) > 0 ? 1 : BATCH;
    try {
      for (let first = 0; first < request.sources.length; first += groupSize) {
        const group = request.sources.slice(first, first + groupSize);
        columnsOf(group, block, request.scene, visibility, part).forEach((column, k) => {
          if (column.deposit.length === 0) return;
          batch.columns.push(column.deposit);
          batch.iSources.push(first + k);
          if (batch.columns.length === BATCH) flush();
          if (request.withSignature && column.signature) {
            signature ??= new Uint32Array(points.count);
            for (let i = 0; i < signature.length; i++) signature[i]! ^= column.signature[i]!;
          }
        });
        if (arrival) {
          group.forEach(({ key: sourceKey, source }, k) => {
            const place = `${sourceKey}/${key}/${request.scene.key}/arrival`;
            const moments = keep(place, 'arrival', () => computeArrival(source, points, visibility, kernel));
            addScaledInto(arrival.angle, moments.angle, request.mixes[0]?.[first + k] ?? 0);
            addScaledInto(arrival.grazing, moments.grazing, request.mixes[0]?.[first + k] ?? 0);
          });
        }
        await control?.step((first + group.length) / request.sources.length);
      }
      flush();
    } finally {
      letGo(); // also of a calculation that was stopped
    }
    return { sums, signature, arrival };
  };

  const deposit = async (request: DepositRequest, control?: Control): Promise<DepositResult[]> => {
    const { onFace, anywhere } = await inScene(request.scene);
    const total = request.blocks.reduce((sum, { points }) => sum + points.count, 0);
    const results: DepositResult[] = [];
    let done = 0;
    for (const block of request.blocks) {
      const [from, to] = [done / total, (done + block.points.count) / total];
      const part = staged(control, from, to);
      results.push(await depositAtBlock(request, block, block.onFace ? onFace : anywhere, part));
      done += block.points.count;
    }
    return results;
  };

  const trace = async (request: TraceRequest, control?: Control): Promise<Float64Array[]> => {
    const { scene } = await inScene(request.scene);
    const shares: Float64Array[] = [];
    for (const [f, { key, source }] of request.sources.entries()) {
      const place = `${key}/${request.scene.key}/${request.rays}/${request.seed}`;
      const seed = request.seed ^ Number.parseInt(key.slice(0, 8), 16);
      shares.push(keep(place, 'shares', () => traceBudget(source, scene, request.rays, seed)));
      await control?.step((f + 1) / request.sources.length);
    }
    return shares;
  };

  return { deposit, trace };
}

/** Columns waiting to be summed together. */
interface Batch {
  readonly columns: Float64Array[];
  readonly iSources: number[];
}

/** Overwrites `sum` with Σ factors[k] · columns[k], always in the same order. */
function weightedSum(sum: Float64Array, columns: readonly Float64Array[], factors: readonly number[]): Float64Array {
  if (columns.length < BATCH) {
    sum.fill(0);
    columns.forEach((column, k) => addScaledInto(sum, column, factors[k]!));
    return sum;
  }
  const [p, q, r, s] = columns as [Float64Array, Float64Array, Float64Array, Float64Array];
  const [a, b, c, d] = factors as [number, number, number, number];
  for (let i = 0; i < sum.length; i++) sum[i] = a * p[i]! + b * q[i]! + c * r[i]! + d * s[i]!;
  return sum;
}

/** out += values. */
function addInto(out: Float64Array, values: Float64Array): void {
  for (let i = 0; i < out.length; i++) out[i]! += values[i]!;
}

/** out += factor · values. */
function addScaledInto(out: Float64Array, values: Float64Array, factor: number): void {
  if (factor === 0) return;
  for (let i = 0; i < out.length; i++) out[i]! += factor * values[i]!;
}
