/** What differs between two designs, line by line. */
import { CirclePlus, CircleMinus, PencilLine, Tag } from 'lucide-react';
import type { Difference } from '../../format/differences.ts';

const SIGNS = { changed: PencilLine, added: CirclePlus, removed: CircleMinus, renamed: Tag } as const;
const WORDS = { changed: 'Changed', added: 'Added', removed: 'Removed', renamed: 'Renamed' } as const;

export function DifferenceList({ differences }: { readonly differences: readonly Difference[] }) {
  if (differences.length === 0) return <p>Nothing: both designs mean the same.</p>;
  return (
    <ul className="difference-list">
      {differences.map(({ kind, part, text }, i) => {
        const Sign = SIGNS[kind];
        const at = text.indexOf(part);
        return (
          <li key={`${i} ${text}`} data-kind={kind}>
            <Sign aria-label={WORDS[kind]} role="img" size={14} />
            <span>
              {text.slice(0, at)}
              <b>{part}</b>
              {text.slice(at + part.length)}
            </span>
          </li>
        );
      })}
    </ul>
  );
}
