/** The page's evaluator; which transport it computes on is decided here and nowhere else. */
import { createEvaluator, type Evaluator } from '../../engine/index.ts';
import { createBrowserPool } from '../../workers/browserPool.ts';

let made: Evaluator | null = null;

/** Starts its workers with the first coat that is asked for. */
export const evaluator: Evaluator = {
  evaluate: async (...asked) => {
    made ??= createEvaluator(createBrowserPool().transport);
    return made.evaluate(...asked);
  },
};
