/** Smooth fields on request, whoever computes them: this thread, or a worker. */
import { LRUCache } from 'lru-cache';
import { createPlainKernel } from '../transport/depositKernel.ts';
import type { KeyedSource, SceneData } from '../transport/transport.ts';
import type { FieldKernel } from './fieldKernel.ts';
import { createFieldSolver, type FieldSolver } from './fieldSolver.ts';
import type { SmoothField } from './smoothField.ts';

export interface FieldRequest {
  /** of which only the mirror's shape and the gas matter */
  readonly scene: SceneData;
  /** filaments that nothing hides from any point of the face */
  readonly sources: readonly KeyedSource[];
  /** [sources] kg */
  readonly masses: Float64Array;
  /** wanted bound of the error over the mean, 1 */
  readonly wantedError: number;
}

export interface Fields {
  readonly solve: (request: FieldRequest) => Promise<SmoothField>;
}

/** Mirrors whose solvers, with their columns, are remembered. */
const MOST_MIRRORS = 4;
/** Bytes of columns that each of them keeps. */
const COLUMN_BYTES = 8 * 2 ** 20;

/** Fields computed in this thread; the kernel must not be shared with others. */
export function createLocalFields(kernel: FieldKernel = createPlainKernel()): Fields {
  const solvers = new LRUCache<string, FieldSolver>({ max: MOST_MIRRORS });
  return {
    solve: async ({ scene: { shape, perFreePath }, sources, masses, wantedError }) => {
      const key = JSON.stringify(shape);
      const solver = solvers.get(key) ?? createFieldSolver(shape, kernel, { columnBytes: COLUMN_BYTES });
      solvers.set(key, solver);
      return Promise.resolve(solver.solve(sources, masses, { wantedError, perFreePath }));
    },
  };
}
