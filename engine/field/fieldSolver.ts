/** From sources to the smooth field: one column for each class of twins, then sums of coefficients. */
import { LRUCache } from 'lru-cache';
import type { MirrorShape } from '../geometry/mirrorShape.ts';
import type { OrientedPoints } from '../geometry/orientedPoints.ts';
import type { KeyedSource } from '../transport/transport.ts';
import { columnSeries, depositAtNodes, type ColumnSeries } from './columnSeries.ts';
import { faceNodes, type NodeCounts } from './faceNodes.ts';
import type { FieldKernel } from './fieldKernel.ts';
import { columnWork, enlargedCounts, foreseenCounts, workWanted } from './nodeCounts.ts';
import { borderPoints, steepestDecay } from './kinks.ts';
import { createSeriesSum, domainOf, thinned, type SeriesSum } from './polarSeries.ts';
import { radialMeans } from './radialMean.ts';
import { classError, massOf } from './seriesError.ts';
import type { SmoothField } from './smoothField.ts';
import { chargeSums, twinClasses, type TwinClass } from './twins.ts';

export interface SolveOptions {
  /** wanted bound of the error over the mean, 1; 0.0005 unless told otherwise */
  readonly wantedError?: number;
  /** inverse mean free path in the residual gas, 1/m; 0 is vacuum */
  readonly perFreePath?: number;
}

export interface FieldSolver {
  /**
   * The field of sources that nothing hides from any point of the face.
   *
   * Shields and obstacles are not looked at: give it only filaments that canBeHidden rules out.
   *
   * @param masses [sources] kg
   */
  readonly solve: (sources: readonly KeyedSource[], masses: ArrayLike<number>, options?: SolveOptions) => SmoothField;
}

export const DEFAULT_WANTED_ERROR = 5e-4;
/** Bytes of columns kept. */
const COLUMN_BYTES = 32 * 2 ** 20;
/** Bytes of nodes kept. */
const NODE_BYTES = 16 * 2 ** 20;
/** Shares of the wanted error that azimuth, radius and thinning may use up. */
const SHARES = { azimuth: 0.5, radius: 0.4, thinning: 0.1 } as const;
/** Points of the usual display grid. */
const DIRECT_POINTS = 20_000;
/** Share of the direct sum’s work up to which a column is worth its while; columns on too few nodes before it come on top. */
const WORTHWHILE = 0.5;
/** Foreseen work over that, beyond which a column is not begun: foresight may be wrong by less. */
const HOPELESS = 2;
/** Enlargements of the nodes before a class is left to others. */
const ROUNDS = 5;

/** A class with its column and what the sum over it leaves out, kg/m². */
interface SolvedClass {
  readonly one: TwinClass;
  readonly column: ColumnSeries;
  readonly error: number;
}

export interface FieldSolverOptions {
  /** bytes of columns kept, 32 MB unless told otherwise */
  readonly columnBytes?: number;
  /** points of the direct sum that the series must beat, 20,000 unless told otherwise */
  readonly directPoints?: number;
}

/** Makes a solver for one mirror that remembers columns by the content of their filaments. */
export function createFieldSolver(
  shape: MirrorShape,
  kernel: FieldKernel,
  { columnBytes = COLUMN_BYTES, directPoints = DIRECT_POINTS }: FieldSolverOptions = {},
): FieldSolver {
  const columns = new LRUCache<string, ColumnSeries>({ maxSize: columnBytes, sizeCalculation: bytesOf });
  const nodes = new LRUCache<string, OrientedPoints>({
    maxSize: NODE_BYTES,
    sizeCalculation: ({ position, normal }) => position.byteLength + normal.byteLength,
  });
  const domain = domainOf(shape);
  const border = borderPoints(shape);

  const nodesOf = (counts: NodeCounts, isEven: boolean): OrientedPoints => {
    const key = `${counts.radialCount} ${counts.azimuthCount} ${isEven}`;
    const found = nodes.get(key) ?? faceNodes(shape, counts, isEven);
    nodes.set(key, found);
    return found;
  };

  const compute = ({ turned, isEven }: TwinClass, counts: NodeCounts, perFreePath: number): ColumnSeries => {
    const values = depositAtNodes(turned.source, nodesOf(counts, isEven), kernel, perFreePath);
    return columnSeries(values, counts, steepestDecay(turned.source, border));
  };

  const means = new Map<number, Float64Array>();

  /** Mean over the flat domain of what a class leaves, kg/m². */
  const meanOf = ({ counts: { radialCount }, cosine }: ColumnSeries, one: TwinClass): number => {
    const weights = means.get(radialCount) ?? radialMeans(radialCount, domain.inner, domain.outer);
    means.set(radialCount, weights);
    let mean = 0;
    for (let k = 0; k < radialCount; k++) mean += weights[k]! * cosine[k]!;
    return mean * massOf(one);
  };

  /** The class's column on enough nodes, or null. */
  const solveClass = (one: TwinClass, wanted: number, perFreePath: number): SolvedClass | null => {
    const key = `${one.key} ${perFreePath}`;
    let column = columns.get(key);
    let counts = column?.counts ?? foreseenCounts(one.turned.source, shape, wanted);
    const { count } = one.turned.source;
    const most = WORTHWHILE * one.members.length * count * directPoints;
    if (!column && columnWork(counts.radialCount, counts.azimuthCount, count) > HOPELESS * most) return null;
    for (let round = 0; round <= ROUNDS; round++) {
      column ??= compute(one, counts, perFreePath);
      columns.set(key, column);
      const error = classError(column, one);
      const mean = wanted * meanOf(column, one);
      // nothing at any node: the source looks away, or its beam passes between them
      if (mean === 0) break;
      const allowed = { azimuth: SHARES.azimuth * mean, radius: SHARES.radius * mean };
      if (error.azimuth <= allowed.azimuth && error.radius <= allowed.radius) {
        return { one, column, error: error.azimuth + error.radius };
      }
      if (!(workWanted(counts, count, error, allowed) <= most)) break;
      const larger = enlargedCounts(counts, error, allowed);
      if (larger.azimuthCount === counts.azimuthCount && larger.radialCount === counts.radialCount) break;
      counts = larger;
      column = undefined;
    }
    return null;
  };

  const solve: FieldSolver['solve'] = (sources, masses, options = {}) => {
    const { wantedError = DEFAULT_WANTED_ERROR, perFreePath = 0 } = options;
    const solved: SolvedClass[] = [];
    const rough: number[] = [];
    for (const one of twinClasses(sources, masses, shape)) {
      const found = solveClass(one, wantedError, perFreePath);
      if (found) solved.push(found);
      else rough.push(...one.members);
    }
    const sum = sumClasses(solved);
    const mean = solved.reduce((all, { one, column }) => all + meanOf(column, one), 0);
    const { series, leftOut } = thinned(domain, sum, SHARES.thinning * wantedError * mean);
    const error = solved.reduce((all, one) => all + one.error, leftOut);
    return { series, error, rough: rough.toSorted((p, q) => p - q) };
  };

  return { solve };
}

function bytesOf({ cosine, sine, amplitude }: ColumnSeries): number {
  return cosine.byteLength + (sine?.byteLength ?? 0) + amplitude.byteLength;
}

/** All classes added up. */
function sumClasses(solved: readonly SolvedClass[]): SeriesSum {
  const radialCount = Math.max(1, ...solved.map(({ column }) => column.counts.radialCount));
  const harmonicCount = Math.max(1, ...solved.map(({ column }) => column.amplitude.length));
  const sum = createSeriesSum(radialCount, harmonicCount);
  for (const one of solved) addClass(sum, one);
  return sum;
}

/**
 * Adds the columns of a class, each turned by its angle φ, and mirrored ones with their sines reversed.
 *
 *     Σ_i q_i Σ_m a_m cos m(θ − φ_i) ± b_m sin m(θ − φ_i)
 */
function addClass(sum: SeriesSum, { one, column }: SolvedClass): void {
  const count = column.amplitude.length;
  const K = column.counts.radialCount;
  const own = chargeSums(one.angles, one.masses, count);
  const mirrored = chargeSums(one.mirroredAngles, one.mirroredMasses, count);
  for (let m = 0; m < count; m++) {
    const [p, q, pm, qm] = [own.cosine[m]!, own.sine[m]!, mirrored.cosine[m]!, mirrored.sine[m]!];
    const to = m * sum.radialCount;
    for (let k = 0; k < K; k++) {
      const a = column.cosine[m * K + k]!;
      const b = column.sine ? column.sine[m * K + k]! : 0;
      sum.cosine[to + k]! += a * (p + pm) - b * (q - qm);
      sum.sine[to + k]! += a * (q + qm) + b * (p - pm);
    }
  }
}
