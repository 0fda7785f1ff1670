/** The verdict on a coat as a sign: even, uneven or bare. */
import { CircleCheck, CircleSlash, TriangleAlert } from 'lucide-react';
import { verdictOf, type Coat } from '../../../engine/index.ts';

const SIGNS = { even: CircleCheck, uneven: TriangleAlert, bare: CircleSlash } as const;
const WORDS = { even: 'within tolerance', uneven: 'outside tolerance', bare: 'bare' } as const;

export function VerdictSign({ coat }: { readonly coat: Coat }) {
  const { level, sentence } = verdictOf(coat);
  const Sign = SIGNS[level];
  return (
    <span className="verdict-sign" data-level={level} title={sentence}>
      <Sign aria-hidden="true" size={14} />
      <span className="visually-hidden">{WORDS[level]}, </span>
    </span>
  );
}
