/** The page's evaluator and its flights of atoms; which workers they compute in is decided here and nowhere else. */
import type { ChunkRunner } from '../../engine/gas/scatter.ts';
import { createEvaluator, type Evaluator } from '../../engine/index.ts';
import { createBrowserPool } from '../../workers/browserPool.ts';

interface Compute {
  readonly evaluator: Evaluator;
  readonly fly: ChunkRunner;
}

let made: Compute | null = null;

/** Starts the workers with the first work that is asked for. */
function compute(): Compute {
  if (made) return made;
  const { transport, fields, fly } = createBrowserPool();
  made = { evaluator: createEvaluator(transport, fields), fly };
  return made;
}

export const evaluator: Evaluator = {
  evaluate: async (...asked) => compute().evaluator.evaluate(...asked),
};

/** Follows atoms through gas. */
export const flyAtoms: ChunkRunner = async (...asked) => compute().fly(...asked);
