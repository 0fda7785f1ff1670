/**
 * Cautions where work can hurt someone: beside the step that they belong to, never only at the end of a page. They are
 * the usual ones of the trade; local codes and licensed practice come first, and the block says so.
 */
import { ShieldAlert } from 'lucide-react';
import './cautions.css';

interface CautionsProps {
  /** what the cautions are about, such as "Cautions for the glow discharge" */
  readonly title: string;
  readonly cautions: readonly string[];
}

export function Cautions({ title, cautions }: CautionsProps) {
  return (
    <div className="cautions" role="note" aria-label={title}>
      <ShieldAlert aria-hidden="true" size={24} strokeWidth={1.75} />
      <div>
        <p className="strong">{title}</p>
        <ul>
          {cautions.map((caution) => (
            <li key={caution}>{caution}</li>
          ))}
        </ul>
        <p className="quiet">Local codes and licensed practice come first. Evenfall advises; it controls nothing.</p>
      </div>
    </div>
  );
}
