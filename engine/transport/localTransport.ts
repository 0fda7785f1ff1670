/** Transport computed in the calling thread, with a bounded store of columns. */
import type { FilamentSource } from '../emission/filamentSource.ts';
import type { OrientedPoints } from '../geometry/orientedPoints.ts';
import { casterCount, type Scene } from '../geometry/scene.ts';
import { buildScene } from './buildScene.ts';
import { computeArrival, computeColumns, computeHidden, seeAll, sumClearInto, type Column } from './column.ts';
import { createColumnStore } from './columnStore.ts';
import { createPlainKernel, MIXES, type DepositKernel } from './depositKernel.ts';
import { traceBudget } from './massRays.ts';
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
import { addInto, addScaledInto, weightedSum } from './weightedSum.ts';
import { createVisibility, type Visibility } from './visibility.ts';

/** Bytes of columns that one thread keeps unless told otherwise. */
const DEFAULT_STORE_BYTES = 96 * 2 ** 20;

/** Columns that are summed, and computed, together. */
const BATCH = 8;

/** Share of the store that the columns of one request may take in quiet moments. */
const QUIET_SHARE = 3 / 4;

/** A transport in this thread, which can use quiet moments to keep what it only passed through. */
export interface LocalTransport extends Transport {
  /**
   * Computes and keeps a few more columns of the last deposit, so that a changed charge will ask for none of them.
   *
   * @returns whether more are left; false if those of the last deposit would crowd the store
   */
  readonly keepMore: () => boolean;
  /** Takes an array that nobody needs any more, to write over it. */
  readonly giveBack: (array: Float64Array) => void;
}

/**
 * Makes a transport that computes in this thread.
 *
 * Columns are kept by the content that determines them (source, points, scene), least recently used
 * out first, so that a changed charge recomputes none and a moved filament one. What does not fit is
 * computed, added and forgotten. Where nothing is hidden from a filament, to keep its column costs as much as
 * to compute it: such a column is kept when it is asked for again, or in a quiet moment.
 *
 * @param storeBytes bound of the store
 * @param kernel what sums the deposits; a SIMD one must not be shared with another transport
 * @param single the same in single precision, for drafts
 */
export function createLocalTransport(
  storeBytes = DEFAULT_STORE_BYTES,
  kernel: DepositKernel = createPlainKernel(),
  single: DepositKernel = kernel,
): LocalTransport {
  const store = createColumnStore(storeBytes);
  /** groups of the last deposit whose columns may not be kept yet */
  let waiting: Group[] = [];
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

  const computeGroup = (sources: readonly FilamentSource[], { block, visibility, part, summing }: Group): Column[] =>
    part === 'hidden'
      ? sources.map((source) => computeHidden(source, block.points, visibility, summing))
      : computeColumns(sources, block.points, visibility, summing, store.take);

  /** Shows the columns of some of a group's filaments; those that are not kept are computed together. */
  const showColumns = (group: Group, isWanted: boolean): ShownColumn[] => {
    const { places } = group;
    const found = places.map((place) => store.find(place, 'column'));
    const missing = group.sources.filter((_, k) => !found[k]);
    const made =
      missing.length > 0
        ? computeGroup(
            missing.map(({ source }) => source),
            group,
          )
        : [];
    return places.map((place, k) => {
      const column = found[k] ?? made.shift()!;
      // columns with shadows are dear
      store.show(place, column, isWanted || group.part === 'hidden' || column.signature !== null);
      return { place, column };
    });
  };

  /** The sums of a group that is met for the first time and sees all of the points; null of any other. */
  const sumInPassing = (group: Group, mixes: readonly Float64Array[]): readonly Float64Array[] | null => {
    const { visibility, part, summing } = group;
    const { points } = group.block;
    const sources = group.sources.map(({ source }) => source);
    if (part === 'hidden' || mixes.length > MIXES || !store.meet(group.places)) return null;
    if (!seeAll(sources, points, visibility)) return null;
    const sums = mixes.map(() => store.take(points.count));
    sumClearInto(sums, mixes, sources, points, visibility, summing);
    return sums;
  };

  /** Adds what a group leaves to each sum, and to the signature. */
  const addGroup = async (group: Group, answer: Unfinished, pause: (done: number) => Promise<void>): Promise<void> => {
    const { sources, places, where, first, block } = group;
    const { count } = block.points;
    const mixes = answer.mixes.map((mix) => mix.slice(first, first + sources.length));
    // sums of a few columns are kept: a changed charge makes one anew and adds up the others
    const keys = sources.map(({ key }) => key).join();
    const sumPlaces = mixes.map((factors) => `${keys}/${where}/${factors.join()}`);
    const isMissing = sumPlaces.some((place) => !store.find(place, 'partial'));
    const passed = isMissing ? sumInPassing(group, mixes) : null;
    const shown: ShownColumn[] = [];
    try {
      if ((isMissing || answer.withSignature) && !passed) {
        // filaments that shadows make slow are computed one by one, so that the work can be stopped in between
        const step = casterCount(group.visibility.scene) > 0 ? 1 : sources.length;
        for (let k = 0; k < sources.length; k += step) {
          const few = { sources: sources.slice(k, k + step), places: places.slice(k, k + step) };
          shown.push(...showColumns({ ...group, ...few }, false));
          await pause(first + k + step);
        }
      }
      const columns = shown.map(({ column }) => column);
      mixes.forEach((factors, m) => {
        const make = (): Float64Array => passed?.[m] ?? weightedSum(store.take(count), columns, factors);
        // looked for anew: while this waited, another calculation may have pushed it out
        addInto(answer.sums[m]!, store.keep(sumPlaces[m]!, 'partial', make));
      });
      if (answer.withSignature) for (const { signature } of columns) mergeSignature(answer, signature);
    } finally {
      for (const { place, column } of shown) store.letGo(place, column); // also of a calculation that was stopped
    }
  };

  const addArrival = (
    { sources, places, first, block, visibility, summing }: Group,
    { arrival, mixes }: Unfinished,
  ): void => {
    if (!arrival) return;
    sources.forEach(({ source }, k) => {
      const moments = store.keep(places[k]!, 'arrival', () =>
        computeArrival(source, block.points, visibility, summing),
      );
      addScaledInto(arrival.angle, moments.angle, mixes[0]?.[first + k] ?? 0);
      addScaledInto(arrival.grazing, moments.grazing, mixes[0]?.[first + k] ?? 0);
    });
  };

  const depositAtBlock = async (
    request: DepositRequest,
    groups: readonly Group[],
    { count }: OrientedPoints,
    control: Control | undefined,
  ): Promise<DepositResult> => {
    const pause = async (done: number): Promise<void> => control?.step(Math.min(1, done / request.sources.length));
    const answer: Unfinished = {
      mixes: request.mixes,
      withSignature: request.withSignature,
      sums: request.mixes.map(() => store.take(count).fill(0)),
      signature: null,
      arrival: request.withArrival ? { angle: new Float64Array(count), grazing: new Float64Array(count) } : null,
    };
    for (const group of groups) {
      await addGroup(group, answer, pause);
      addArrival(group, answer);
      await pause(group.first + group.sources.length);
    }
    return answer;
  };

  const deposit = async (request: DepositRequest, control?: Control): Promise<DepositResult[]> => {
    const { onFace, anywhere } = await inScene(request.scene);
    const total = request.blocks.reduce((sum, { points }) => sum + points.count, 0);
    const results: DepositResult[] = [];
    const asked: Group[] = [];
    let done = 0;
    for (const block of request.blocks) {
      const { count } = block.points;
      const summing = request.precision === 'single' ? single : kernel;
      const groups = groupsOf(request, { block, visibility: block.onFace ? onFace : anywhere, summing });
      results.push(
        await depositAtBlock(request, groups, block.points, staged(control, done / total, (done + count) / total)),
      );
      asked.push(...groups);
      done += count;
    }
    if (request.precision !== 'single') waitFor(asked); // a draft is not asked for again
    return results;
  };

  /** Puts groups in line to be kept, unless they would crowd the store; those that waited longest make room. */
  const waitFor = (groups: readonly Group[]): void => {
    const most = QUIET_SHARE * storeBytes;
    if (bytesOf(groups) > most) waiting = [];
    else waiting.push(...groups);
    while (bytesOf(waiting) > most) waiting.shift();
  };

  const keepMore = (): boolean => {
    const group = waiting.shift();
    if (group) for (const { place, column } of showColumns(group, true)) store.letGo(place, column);
    return waiting.length > 0;
  };

  const trace = async (request: TraceRequest, control?: Control): Promise<Float64Array[]> => {
    const { scene } = await inScene(request.scene);
    const shares: Float64Array[] = [];
    for (const [f, { key, source }] of request.sources.entries()) {
      const place = `${key}/${request.scene.key}/${request.rays}/${request.seed}`;
      const seed = request.seed ^ Number.parseInt(key.slice(0, 8), 16);
      shares.push(store.keep(place, 'shares', () => traceBudget(source, scene, request.rays, seed)));
      await control?.step((f + 1) / request.sources.length);
    }
    return shares;
  };

  return { deposit, trace, keepMore, giveBack: store.giveBack };
}

/** A few filaments at one block of points. */
interface Group {
  readonly sources: readonly KeyedSource[];
  /** place of the first of them among those of the request */
  readonly first: number;
  readonly block: KeyedPoints;
  readonly visibility: Visibility;
  readonly part: DepositPart;
  readonly summing: DepositKernel;
  /** all that determines a column beside its source */
  readonly where: string;
  /** [sources] where the store has their columns */
  readonly places: readonly string[];
}

interface ShownColumn {
  readonly place: string;
  readonly column: Column;
}

/** The answer at one block of points, while groups are added to it. */
interface Unfinished {
  readonly mixes: readonly Float64Array[];
  readonly withSignature: boolean;
  readonly sums: readonly Float64Array[];
  signature: Uint32Array | null;
  readonly arrival: DepositResult['arrival'];
}

function groupsOf(
  { sources, scene, part = 'arriving' }: DepositRequest,
  at: Pick<Group, 'block' | 'visibility' | 'summing'>,
): Group[] {
  const where = `${at.block.key}/${scene.key}/${part}/${at.summing.name}`;
  const groups: Group[] = [];
  for (let first = 0; first < sources.length; first += BATCH) {
    const few = sources.slice(first, first + BATCH);
    const places: string[] = [];
    for (const { key } of few) places.push(`${key}/${where}`);
    groups.push({ ...at, sources: few, first, part, where, places });
  }
  return groups;
}

/** Bytes of the columns of groups. */
function bytesOf(groups: readonly Group[]): number {
  let numbers = 0;
  for (const { sources, block } of groups) numbers += sources.length * block.points.count;
  return Float64Array.BYTES_PER_ELEMENT * numbers;
}

function mergeSignature(answer: Unfinished, signature: Uint32Array | null): void {
  if (!signature) return;
  answer.signature ??= new Uint32Array(signature.length);
  for (let i = 0; i < signature.length; i++) answer.signature[i]! ^= signature[i]!;
}
