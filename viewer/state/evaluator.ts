/** The page's evaluator; which transport it computes on is decided here and nowhere else. */
import { createEvaluator, type Evaluator } from '../../engine/index.ts';
import { createBrowserPool } from '../../workers/browserPool.ts';

let made: Evaluator | null = null;

function startEvaluator(): Evaluator {
  const { transport, fields } = createBrowserPool();
  return createEvaluator(transport, fields);
}

/** Starts its workers with the first coat that is asked for. */
export const evaluator: Evaluator = {
  evaluate: async (...asked) => {
    made ??= startEvaluator();
    return made.evaluate(...asked);
  },
};
