/** One step of a stiff differential equation, with its error: a small, implicit Runge–Kutta method. */

/** y' = rate(t, y), and integrals of quantities that do not act back on y. */
export interface StiffProblem {
  readonly count: number;
  readonly integralCount: number;
  /** overwrites out[count] */
  readonly rateInto: (out: Float64Array, time: number, y: Float64Array) => void;
  /** overwrites out[count²]: ∂rate_i/∂y_j at out[count·i + j] */
  readonly slopesInto: (out: Float64Array, time: number, y: Float64Array) => void;
  /** overwrites out[integralCount] */
  readonly integrandsInto: (out: Float64Array, time: number, y: Float64Array) => void;
}

export interface StiffStepper {
  /** after a step: y at its end */
  readonly y: Float64Array;
  /** after a step: what it adds to the integrals */
  readonly integrals: Float64Array;
  /**
   * Steps from (time, y0) by h.
   *
   * @returns the largest error of a component over its scale; Infinity if the equations of a stage did not converge
   */
  readonly step: (time: number, y0: Float64Array, h: number, scale: Float64Array) => number;
}

const ROOT6 = Math.sqrt(6);

/**
 * Radau IIA of order 5 with three stages: L-stable, and exact to order 3 in every stage, so that a pressure
 * that follows its slow load is followed with long steps.
 *
 * @see E. Hairer, G. Wanner, Solving Ordinary Differential Equations II, IV.5 and IV.8 (from memory; the
 * conditions of its order and the measured order are tested)
 */
export const NODES = [(4 - ROOT6) / 10, (4 + ROOT6) / 10, 1] as const;
export const WEIGHTS: readonly (readonly number[])[] = [
  [(88 - 7 * ROOT6) / 360, (296 - 169 * ROOT6) / 1800, (-2 + 3 * ROOT6) / 225],
  [(296 + 169 * ROOT6) / 1800, (88 + 7 * ROOT6) / 360, (-2 - 3 * ROOT6) / 225],
  [(16 - ROOT6) / 36, (16 + ROOT6) / 36, 1 / 9],
];
const LAST = WEIGHTS[2]!;
/** Real eigenvalue of the inverse of the weights, and what the error makes of the stages. */
const EIGENVALUE = 30 / (6 + Math.cbrt(81) - Math.cbrt(9));
const ERROR_WEIGHTS = [-(13 + 7 * ROOT6) / 3, (-13 + 7 * ROOT6) / 3, -1 / 3] as const;
const STAGE_COUNT = 3;

/** Change of a stage, over the error that is asked for, below which it is solved. */
const STAGE_TOLERANCE = 1e-6;
const MOST_ITERATIONS = 10;

/** Inverts a small matrix in place by Gauss–Jordan elimination with pivots. */
function invert(matrix: Float64Array, n: number): void {
  const work = new Float64Array(2 * n * n);
  for (let i = 0; i < n; i++) {
    for (let j = 0; j < n; j++) work[2 * n * i + j] = matrix[n * i + j]!;
    work[2 * n * i + n + i] = 1;
  }
  for (let k = 0; k < n; k++) {
    let pivot = k;
    for (let i = k + 1; i < n; i++) if (Math.abs(work[2 * n * i + k]!) > Math.abs(work[2 * n * pivot + k]!)) pivot = i;
    for (let j = 0; j < 2 * n; j++) {
      const kept = work[2 * n * k + j]!;
      work[2 * n * k + j] = work[2 * n * pivot + j]!;
      work[2 * n * pivot + j] = kept;
    }
    const inverse = 1 / work[2 * n * k + k]!;
    for (let j = 0; j < 2 * n; j++) work[2 * n * k + j]! *= inverse;
    for (let i = 0; i < n; i++) {
      const factor = work[2 * n * i + k]!;
      if (i !== k && factor !== 0)
        for (let j = 0; j < 2 * n; j++) work[2 * n * i + j]! -= factor * work[2 * n * k + j]!;
    }
  }
  for (let i = 0; i < n; i++) for (let j = 0; j < n; j++) matrix[n * i + j] = work[2 * n * i + n + j]!;
}

/** Prepares steps of a problem; the stepper's arrays are used again by each step. */
export function stiffStepper(problem: StiffProblem): StiffStepper {
  const { count: n, integralCount: m } = problem;
  const size = STAGE_COUNT * n;
  const y = new Float64Array(n);
  const integrals = new Float64Array(m);
  const slopes = new Float64Array(n * n);
  const matrix = new Float64Array(size * size);
  const errorMatrix = new Float64Array(n * n);
  /** changes of the stages from the start, one stage after the other */
  const z = new Float64Array(size);
  const residual = new Float64Array(size);
  const rates = Array.from({ length: STAGE_COUNT }, () => new Float64Array(n));
  const stage = new Float64Array(n);
  const startRate = new Float64Array(n);
  const integrands = new Float64Array(m);

  /** Inverse of 1 − h W ⊗ J for the stages, and of u/h − J for the error. */
  function prepareMatrices(time: number, y0: Float64Array, h: number): void {
    problem.slopesInto(slopes, time, y0);
    for (let s = 0; s < STAGE_COUNT; s++)
      for (let r = 0; r < STAGE_COUNT; r++)
        for (let i = 0; i < n; i++)
          for (let j = 0; j < n; j++)
            matrix[(s * n + i) * size + r * n + j] =
              (s === r && i === j ? 1 : 0) - h * WEIGHTS[s]![r]! * slopes[n * i + j]!;
    invert(matrix, size);
    for (let i = 0; i < n; i++)
      for (let j = 0; j < n; j++) errorMatrix[n * i + j] = (i === j ? EIGENVALUE / h : 0) - slopes[n * i + j]!;
    invert(errorMatrix, n);
  }

  function stageInto(y0: Float64Array, s: number): void {
    for (let i = 0; i < n; i++) stage[i] = y0[i]! + z[s * n + i]!;
  }

  /** Solves z = h W f(t, y0 + z) by Newton's method with the slopes of the start. */
  function solveStages(time: number, y0: Float64Array, h: number, scale: Float64Array): boolean {
    z.fill(0);
    for (let iteration = 0; iteration < MOST_ITERATIONS; iteration++) {
      for (let s = 0; s < STAGE_COUNT; s++) {
        stageInto(y0, s);
        problem.rateInto(rates[s]!, time + NODES[s]! * h, stage);
      }
      for (let s = 0; s < STAGE_COUNT; s++)
        for (let i = 0; i < n; i++) {
          let value = -z[s * n + i]!;
          for (let r = 0; r < STAGE_COUNT; r++) value += h * WEIGHTS[s]![r]! * rates[r]![i]!;
          residual[s * n + i] = value;
        }
      let change = 0;
      for (let k = 0; k < size; k++) {
        let correction = 0;
        for (let j = 0; j < size; j++) correction += matrix[size * k + j]! * residual[j]!;
        z[k]! += correction;
        change = Math.max(change, Math.abs(correction) / scale[k % n]!);
      }
      if (!Number.isFinite(change)) return false;
      if (change < STAGE_TOLERANCE) return true;
    }
    return false;
  }

  /** Difference to a solution of order 3, damped by the slopes so that stiff parts do not count too much. */
  function errorOf(time: number, y0: Float64Array, h: number, scale: Float64Array): number {
    problem.rateInto(startRate, time, y0);
    for (let i = 0; i < n; i++)
      for (let s = 0; s < STAGE_COUNT; s++) startRate[i]! += (ERROR_WEIGHTS[s]! * z[s * n + i]!) / h;
    let error = 0;
    for (let i = 0; i < n; i++) {
      let value = 0;
      for (let j = 0; j < n; j++) value += errorMatrix[n * i + j]! * startRate[j]!;
      error = Math.max(error, Math.abs(value) / scale[i]!);
    }
    return Number.isFinite(error) ? error : Infinity;
  }

  function step(time: number, y0: Float64Array, h: number, scale: Float64Array): number {
    prepareMatrices(time, y0, h);
    if (!solveStages(time, y0, h, scale)) return Infinity;
    integrals.fill(0);
    for (let s = 0; s < STAGE_COUNT; s++) {
      stageInto(y0, s);
      problem.integrandsInto(integrands, time + NODES[s]! * h, stage);
      for (let k = 0; k < m; k++) integrals[k]! += h * LAST[s]! * integrands[k]!;
    }
    y.set(stage); // the last stage is the end of the step
    return errorOf(time, y0, h, scale);
  }

  return { y, integrals, step };
}
