/** The answer first: one sentence, and a second one under it. */
import { CircleCheck, CircleSlash, Hourglass, TriangleAlert } from 'lucide-react';
import './verdict.css';

const SIGNS = { good: CircleCheck, caution: TriangleAlert, bad: CircleSlash, waiting: Hourglass } as const;

interface VerdictLineProps {
  /** doubled by a sign of its own shape; `waiting` while there is no answer yet */
  readonly level: keyof typeof SIGNS;
  readonly sentence: string;
  readonly second: string;
}

/** Numbers stay on one line with their units. */
const unbroken = (text: string): string =>
  text.replace(/(\d) (%|nm|Å|mm|m|s|min|h|mbar|Pa|Torr|of)(?=\W)/g, '$1\u00a0$2');

export function VerdictLine({ level, sentence, second }: VerdictLineProps) {
  const Sign = SIGNS[level];
  return (
    <div className="verdict" role="status" aria-label="Verdict" data-level={level}>
      <Sign aria-hidden="true" size={32} strokeWidth={1.5} />
      <div>
        <p className="verdict-sentence">{unbroken(sentence)}</p>
        <p className="verdict-second">{unbroken(second)}</p>
      </div>
    </div>
  );
}
