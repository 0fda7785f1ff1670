/** The influence column of one filament: deposit at every point per kilogram that it evaporates. */
import type { FilamentSource } from '../emission/filamentSource.ts';
import type { OrientedPoints } from '../geometry/orientedPoints.ts';
import { addDepositInto } from './depositKernels.ts';
import { canBeHidden, hideInto, pointsBound, type Visibility } from './visibility.ts';

/** Points of one run: their 48 kB stay in the first-level cache while the sub-sources pass over them. */
const RUN = 512;

export interface Column {
  /** [points] 1/m²: kg/m² per kg evaporated */
  readonly deposit: Float64Array;
  /**
   * [points] which sub-sources are hidden, as a hash: two points with the same number see the same
   * sub-sources. Null where nothing can be hidden from this filament.
   */
  readonly signature: Uint32Array | null;
}

/** A number that stands for "sub-source j of this filament is hidden". */
function hiddenMark(source: FilamentSource, j: number): number {
  let mark = 0x811c9dc5 ^ Math.imul(j + 1, 0x9e3779b1);
  const words = new Uint32Array(
    Float64Array.of(source.position[3 * j]!, source.position[3 * j + 1]!, source.position[3 * j + 2]!).buffer,
  );
  for (const word of words) mark = Math.imul(mark ^ word ^ (mark >>> 15), 0x85ebca6b);
  return mark >>> 0;
}

/**
 * Computes a filament's column over all points, shadows included.
 *
 *     μ(x) = Σ_s w_s I_s(u) max(0, −u·n) / r² · V(s, x)
 *
 * @see Holland & Steckelmacher, Vacuum 2 (1952) 346, for the point-source form
 */
export function computeColumn(source: FilamentSource, points: OrientedPoints, visibility: Visibility): Column {
  const deposit = new Float64Array(points.count);
  if (!canBeHidden(visibility, source)) {
    for (let begin = 0; begin < points.count; begin += RUN) {
      const end = Math.min(points.count, begin + RUN);
      const run = deposit.subarray(begin, end);
      for (let j = 0; j < source.count; j++) addDepositInto(run, points, begin, end, source, j);
    }
    return { deposit, signature: null };
  }
  const signature = new Uint32Array(points.count);
  forEachVisibleRun(source, points, visibility, (values, hidden, begin, end, j) => {
    const mark = hiddenMark(source, j);
    for (let i = begin; i < end; i++) {
      deposit[i]! += values[i - begin]!;
      if (hidden[i - begin] === 1) signature[i]! ^= mark;
    }
  });
  return { deposit, signature };
}

/** For each run and sub-source: its deposits with shadows, and which points are hidden. */
function forEachVisibleRun(
  source: FilamentSource,
  points: OrientedPoints,
  visibility: Visibility,
  visit: (values: Float64Array, hidden: Uint8Array, begin: number, end: number, j: number) => void,
): void {
  const values = new Float64Array(RUN);
  const hidden = new Uint8Array(RUN);
  for (let begin = 0; begin < points.count; begin += RUN) {
    const end = Math.min(points.count, begin + RUN);
    const target = pointsBound(points, begin, end);
    for (let j = 0; j < source.count; j++) {
      values.fill(0);
      addDepositInto(values, points, begin, end, source, j);
      hideInto(values, hidden, visibility, points, begin, end, source, j, target);
      visit(values, hidden, begin, end, j);
    }
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
export function computeArrival(source: FilamentSource, points: OrientedPoints, visibility: Visibility): ArrivalMoments {
  const angle = new Float64Array(points.count);
  const grazing = new Float64Array(points.count);
  const { position: p, normal: n } = points;
  const s = source.position;
  forEachVisibleRun(source, points, visibility, (values, _hidden, begin, end, j) => {
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
  });
  return { angle, grazing };
}
