/** The influence columns of filaments: deposit at every point per kilogram that it evaporates. */
import type { FilamentSource } from '../emission/filamentSource.ts';
import type { OrientedPoints } from '../geometry/orientedPoints.ts';
import { createPlainKernel, RUN, type DepositKernel } from './depositKernel.ts';
import { createDoubts, findHiders, gatherDoubtsInto, hideInto, type Doubts, type Hiders } from './hiders.ts';
import { patchesOf } from './patches.ts';
import { canBeHidden, type Visibility } from './visibility.ts';

export interface Column {
  /** [points] 1/m²: kg/m² per kg evaporated */
  readonly deposit: Float64Array;
  /**
   * [points] which sub-sources are hidden, as a hash: two points with the same number see the same
   * sub-sources. Null where nothing can be hidden from this filament.
   */
  readonly signature: Uint32Array | null;
}

/** [sub-sources] numbers that stand for "this sub-source of this filament is hidden". */
function hiddenMarks({ count, position }: FilamentSource): Uint32Array {
  const words = new Uint32Array(Float64Array.from(position).buffer); // two a coordinate
  const marks = new Uint32Array(count);
  for (let j = 0; j < count; j++) {
    let mark = 0x811c9dc5 ^ Math.imul(j + 1, 0x9e3779b1);
    for (let k = 6 * j; k < 6 * j + 6; k++) mark = Math.imul(mark ^ words[k]! ^ (mark >>> 15), 0x85ebca6b);
    marks[j] = mark;
  }
  return marks;
}

/**
 * Computes the columns of filaments over all points, shadows included.
 *
 *     μ(x) = Σ_s w_s I_s(u) max(0, −u·n) / r² · V(s, x)
 *
 * Several at once share the points' way to the kernel; each column comes out the same as alone.
 *
 * @param take gives the arrays of the deposits, [points] each, with anything in them
 * @see Holland & Steckelmacher, Vacuum 2 (1952) 346, for the point-source form
 */
export function computeColumns(
  sources: readonly FilamentSource[],
  points: OrientedPoints,
  visibility: Visibility,
  kernel: DepositKernel,
  take = (length: number): Float64Array => new Float64Array(length),
): Column[] {
  const hiders = sources.map((source) => hidersOf(visibility, source, points));
  const columns = hiders.map((found): Column => ({
    deposit: take(points.count),
    signature: found && new Uint32Array(points.count),
  }));
  const marks = sources.map((source, f) => (hiders[f] ? hiddenMarks(source) : NO_MARKS));
  const scratch = createScratch(points, visibility);
  for (let begin = 0; begin < points.count; begin += RUN) {
    const end = Math.min(points.count, begin + RUN);
    kernel.load(points, begin, end, visibility.perFreePath);
    sources.forEach((source, f) => {
      const { deposit, signature } = columns[f]!;
      const run = deposit.subarray(begin, end);
      const found = hiders[f];
      if (found && signature && gatherDoubtsInto(scratch.doubts, found, begin) > 0) {
        addVisibleRun(run, signature.subarray(begin, end), {
          hiders: found,
          marks: marks[f]!,
          begin,
          kernel,
          scratch,
        });
      } else {
        kernel.clear();
        kernel.addAll(source);
        kernel.readInto(run);
      }
    });
  }
  return columns;
}

/** Whether some filaments see all of the points. */
export function seeAll(sources: readonly FilamentSource[], points: OrientedPoints, visibility: Visibility): boolean {
  return sources.every((source) => !hidersOf(visibility, source, points));
}

/**
 * Sums filaments that see all of the points (see seeAll), without making their columns.
 *
 * @param factors [mixes][sources] kg, MIXES at most
 * @param outs [mixes][points] kg/m², overwritten
 */
export function sumClearInto(
  outs: readonly Float64Array[],
  factors: readonly Float64Array[],
  sources: readonly FilamentSource[],
  points: OrientedPoints,
  visibility: Visibility,
  kernel: DepositKernel,
): void {
  for (let begin = 0; begin < points.count; begin += RUN) {
    const end = Math.min(points.count, begin + RUN);
    kernel.load(points, begin, end, visibility.perFreePath);
    kernel.clearMixes();
    // loops without closures: thousands of them a calculation would keep the garbage collector busy
    for (let f = 0; f < sources.length; f++) {
      kernel.clear();
      kernel.addAll(sources[f]!);
      for (let m = 0; m < outs.length; m++) kernel.addToMix(m, factors[m]![f]!);
    }
    for (let m = 0; m < outs.length; m++) kernel.readMixInto(outs[m]!.subarray(begin, end), m);
  }
}

/** The deposit of a column that is hidden everywhere: none. */
export const NOTHING = new Float64Array(0);

/**
 * Computes what of a filament's deposit is hidden, with the signature of its column: what it would leave, less this, is
 * what it leaves. Only points in doubt are looked at.
 *
 * @returns a deposit of length 0 where nothing is hidden
 */
export function computeHidden(
  source: FilamentSource,
  points: OrientedPoints,
  visibility: Visibility,
  kernel: DepositKernel,
): Column {
  const hiders = hidersOf(visibility, source, points);
  if (!hiders) return { deposit: NOTHING, signature: null };
  const marks = hiddenMarks(source);
  const { values, hidden, doubts } = createScratch(points, visibility);
  let column: { deposit: Float64Array; signature: Uint32Array } | null = null;
  for (let begin = 0; begin < points.count; begin += RUN) {
    if (gatherDoubtsInto(doubts, hiders, begin) === 0) continue;
    const end = Math.min(points.count, begin + RUN);
    let isLoaded = false;
    for (let j = 0; j < source.count; j++) {
      if (hideInto(hidden, doubts, hiders, begin, j) === 0) continue;
      if (!isLoaded) kernel.load(points, begin, end, visibility.perFreePath);
      isLoaded = true;
      readAlone(values, source, j, kernel);
      column ??= { deposit: new Float64Array(points.count), signature: new Uint32Array(points.count) };
      for (let i = begin; i < end; i++) {
        if (hidden[i - begin] === 0 || values[i - begin] === 0) continue;
        column.deposit[i]! += values[i - begin]!;
        column.signature[i]! ^= marks[j]!;
      }
    }
  }
  return column ?? { deposit: NOTHING, signature: null };
}

/** What may hide some of the points from a filament; null if nothing does. */
function hidersOf(visibility: Visibility, source: FilamentSource, points: OrientedPoints): Hiders | null {
  return canBeHidden(visibility, source) ? findHiders(visibility, source, points, patchesOf(points)) : null;
}

/** The column of one filament in plain TypeScript: for single points, and the reference. */
export function computeColumn(source: FilamentSource, points: OrientedPoints, visibility: Visibility): Column {
  return computeColumns([source], points, visibility, createPlainKernel())[0]!;
}

/** Room for one sub-source's deposits on a run. */
interface Scratch {
  readonly values: Float64Array;
  readonly hidden: Uint8Array;
  readonly doubts: Doubts;
}

function createScratch(points: OrientedPoints, visibility: Visibility): Scratch {
  const length = Math.min(RUN, points.count);
  return { values: new Float64Array(length), hidden: new Uint8Array(length), doubts: createDoubts(visibility) };
}

const NO_MARKS = new Uint32Array(0);

/** A filament over one run of points, the doubts about which are in the scratch. */
interface RunJob {
  readonly hiders: Hiders;
  readonly marks: Uint32Array;
  readonly begin: number;
  readonly kernel: DepositKernel;
  readonly scratch: Scratch;
}

/**
 * Sums a filament's sub-sources one after the other, hidden ones as zero.
 *
 * They are summed in the kernel up to the first that is hidden from some point, from there on here: the order of the
 * sum, and so every bit of it, is the same either way.
 */
function addVisibleRun(
  run: Float64Array,
  signature: Uint32Array,
  { hiders, marks, begin, kernel, scratch }: RunJob,
): void {
  const { source } = hiders;
  const { values, hidden, doubts } = scratch;
  kernel.clear();
  let isSummedHere = false;
  for (let j = 0; j < source.count; j++) {
    const hiddenCount = hideInto(hidden, doubts, hiders, begin, j);
    if (!isSummedHere) {
      if (hiddenCount === 0) {
        kernel.add(source, j);
        continue;
      }
      kernel.readInto(run);
      isSummedHere = true;
    }
    readAlone(values, source, j, kernel);
    if (hiddenCount === 0) for (let i = 0; i < run.length; i++) run[i]! += values[i]!;
    else addSeenInto(run, signature, values, hidden, marks[j]!);
  }
  if (!isSummedHere) kernel.readInto(run);
}

/** Writes the deposits of sub-source j alone. */
function readAlone(out: Float64Array, source: FilamentSource, j: number, kernel: DepositKernel): void {
  kernel.clear();
  kernel.add(source, j);
  kernel.readInto(out);
}

/** Adds the values of points that are not hidden; marks in the signature the others that lost something. */
function addSeenInto(
  run: Float64Array,
  signature: Uint32Array,
  values: Float64Array,
  hidden: Uint8Array,
  mark: number,
): void {
  for (let i = 0; i < run.length; i++) {
    const value = values[i]!;
    const isHidden = hidden[i]!; // 0 or 1: arithmetic, for a branch on it would often be guessed wrong
    run[i]! += value * (1 - isHidden);
    if (value !== 0) signature[i]! ^= mark & -isHidden;
  }
}

/** How steeply a filament's vapour arrives, per kilogram, to be summed like a column. */
export interface ArrivalMoments {
  /** [points] deposit × arrival angle from the normal, rad/m² */
  readonly angle: Float64Array;
  /** [points] deposit that arrives beyond 60° from the normal, 1/m² */
  readonly grazing: Float64Array;
}

/** Cosine beyond which arrival counts as grazing: 60° from the normal. */
const COS_GRAZING = 0.5;

/** Computes the deposit-weighted arrival angle and the grazing share of a filament, shadows included. */
export function computeArrival(
  source: FilamentSource,
  points: OrientedPoints,
  visibility: Visibility,
  kernel: DepositKernel = createPlainKernel(),
): ArrivalMoments {
  const moments = { angle: new Float64Array(points.count), grazing: new Float64Array(points.count) };
  const { values, hidden, doubts } = createScratch(points, visibility);
  const hiders = hidersOf(visibility, source, points);
  for (let begin = 0; begin < points.count; begin += RUN) {
    const end = Math.min(points.count, begin + RUN);
    kernel.load(points, begin, end, visibility.perFreePath);
    const found = hiders && gatherDoubtsInto(doubts, hiders, begin) > 0 ? hiders : null;
    for (let j = 0; j < source.count; j++) {
      readAlone(values, source, j, kernel);
      if (found && hideInto(hidden, doubts, found, begin, j) > 0) {
        for (let i = 0; i < end - begin; i++) if (hidden[i] === 1) values[i] = 0;
      }
      addMomentsInto(moments, values, points, begin, end, source, j);
    }
  }
  return moments;
}

/** Adds angle and grazing share of the deposits of sub-source j on a run. */
function addMomentsInto(
  { angle, grazing }: ArrivalMoments,
  values: Float64Array,
  { position: p, normal: n }: OrientedPoints,
  begin: number,
  end: number,
  source: FilamentSource,
  j: number,
): void {
  const s = source.position;
  for (let i = begin, o = 3 * begin; i < end; i++, o += 3) {
    const value = values[i - begin]!;
    if (value === 0) continue;
    const dx = p[o]! - s[3 * j]!;
    const dy = p[o + 1]! - s[3 * j + 1]!;
    const dz = p[o + 2]! - s[3 * j + 2]!;
    const cosArrive = -(dx * n[o]! + dy * n[o + 1]! + dz * n[o + 2]!) / Math.sqrt(dx * dx + dy * dy + dz * dz);
    angle[i]! += value * Math.acos(Math.min(1, cosArrive));
    if (cosArrive < COS_GRAZING) grazing[i]! += value;
  }
}
