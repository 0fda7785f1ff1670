/** How even the coat is, in plain words. */
import { verdictOf } from '../../../engine/index.ts';
import { VerdictLine } from '../../panels/VerdictLine.tsx';
import { useResult } from '../../state/resultStore.ts';

const LEVELS = { even: 'good', uneven: 'caution', bare: 'bad' } as const;

export function CoatVerdict() {
  const coat = useResult((state) => state.coat);
  const hasFailed = useResult((state) => state.phase === 'failed' || state.phase === 'cancelled');
  if (coat) {
    const { level, sentence, second } = verdictOf(coat);
    return <VerdictLine level={LEVELS[level]} sentence={sentence} second={second} />;
  }
  return hasFailed ? (
    <VerdictLine level="waiting" sentence="There is no result yet." second="The evaluation did not come to its end." />
  ) : (
    <VerdictLine level="waiting" sentence="Working out the first coat." second="This takes a moment." />
  );
}
