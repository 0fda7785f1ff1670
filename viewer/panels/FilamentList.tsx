/** The single filaments of a set, a page at a time. */
import { useState } from 'react';
import type { Filament } from '../../engine/index.ts';
import type { FilamentSetFile } from '../state/filamentEdits.ts';
import { FilamentRow } from './FilamentRow.tsx';

const PAGE = 24;

interface FilamentListProps {
  readonly set: FilamentSetFile;
  readonly iSet: number;
  readonly filaments: readonly Filament[];
}

export function FilamentList({ set, iSet, filaments }: FilamentListProps) {
  const [isOpen, setOpen] = useState(false);
  const [wanted, setWanted] = useState(0);
  const lastPage = Math.max(0, Math.ceil(filaments.length / PAGE) - 1);
  const page = Math.min(wanted, lastPage);
  const shown = filaments.slice(page * PAGE, (page + 1) * PAGE);
  return (
    <details className="filament-list" onToggle={(event) => setOpen(event.currentTarget.open)}>
      <summary>Single filaments of {set.name}</summary>
      {isOpen && (
        <>
          <table>
            <thead>
              <tr>
                <th scope="col">Filament</th>
                <th scope="col">Charge</th>
                <th scope="col">Out of use</th>
              </tr>
            </thead>
            <tbody>
              {shown.map((filament) => (
                <FilamentRow key={filament.number} set={set} iSet={iSet} filament={filament} />
              ))}
            </tbody>
          </table>
          {lastPage > 0 && (
            <div className="pager">
              <button type="button" disabled={page === 0} onClick={() => setWanted(page - 1)}>
                Previous
              </button>
              <span className="number">
                {page * PAGE + 1}–{page * PAGE + shown.length} of {filaments.length}
              </span>
              <button type="button" disabled={page === lastPage} onClick={() => setWanted(page + 1)}>
                Next
              </button>
            </div>
          )}
        </>
      )}
    </details>
  );
}
