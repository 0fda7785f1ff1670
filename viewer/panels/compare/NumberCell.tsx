/** One headline number of a variant, with its error under it and a sign if it is the best of its column. */
import { Star } from 'lucide-react';
import type { Coat } from '../../../engine/index.ts';
import type { Units } from '../../state/units.ts';
import { VerdictSign } from './VerdictSign.tsx';
import type { Column } from './columns.ts';

interface NumberCellProps {
  readonly column: Column;
  readonly coat: Coat;
  readonly units: Units;
  readonly isBest: boolean;
  /** what the number is judged by, where rows differ in it */
  readonly note: string;
}

export function NumberCell({ column, coat, units, isBest, note }: NumberCellProps) {
  const { value, error } = column.text(column.estimate(coat), units);
  return (
    <td data-best={isBest || undefined}>
      <span className="variant-value">
        {column.key === 'mean' && <VerdictSign coat={coat} />}
        {isBest && <Star className="variant-best" aria-label="best" role="img" size={12} />}
        {value}
      </span>
      <span className="variant-error">
        {error}
        {note && <>, in {note}</>}
      </span>
    </td>
  );
}
