/** The page's evaluator; which transport it computes on is decided here and nowhere else. */
import { createEvaluator } from '../../engine/index.ts';
import { createBrowserPool } from '../../workers/browserPool.ts';

export const evaluator = createEvaluator(createBrowserPool().transport);
