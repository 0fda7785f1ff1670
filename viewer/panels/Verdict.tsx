/** The answer first: one sentence, and a second one under it. */
import { CircleCheck, CircleSlash, Hourglass, TriangleAlert } from 'lucide-react';
import { verdictOf } from '../../engine/index.ts';
import { useResult } from '../state/resultStore.ts';

const SIGNS = { even: CircleCheck, uneven: TriangleAlert, bare: CircleSlash, waiting: Hourglass } as const;

/** Numbers stay on one line with their units. */
const unbroken = (text: string): string => text.replace(/(\d) (%|nm|m|of)(?=\W)/g, '$1\u00a0$2');

export function Verdict() {
  const coat = useResult((state) => state.coat);
  const hasFailed = useResult((state) => state.phase === 'failed' || state.phase === 'cancelled');
  const verdict = coat ? verdictOf(coat) : null;
  const Sign = SIGNS[verdict?.level ?? 'waiting'];
  return (
    <div className="verdict" role="status" aria-label="Verdict" data-level={verdict?.level ?? 'waiting'}>
      <Sign aria-hidden="true" size={32} strokeWidth={1.5} />
      <div>
        <p className="verdict-sentence">
          {verdict ? unbroken(verdict.sentence) : hasFailed ? 'There is no result yet.' : 'Working out the first coat.'}
        </p>
        <p className="verdict-second">
          {verdict
            ? unbroken(verdict.second)
            : hasFailed
              ? 'The evaluation did not come to its end.'
              : 'This takes a moment.'}
        </p>
      </div>
    </div>
  );
}
