/** The preview of a pasted table, its faulty cells marked by a frame, a sign and their text. */
import { TriangleAlert } from 'lucide-react';
import type { TablePreview } from './tableFaults.ts';

/** Rows shown from the top; rows with faults are shown wherever they are. */
const TOP = 12;
const MOST_FAULTY = 40;

export function TablePreviewView({ heading, rows, faults }: TablePreview) {
  const faulty = new Set(faults.flatMap(({ row }) => row ?? []));
  const numbered = rows.map((cells, i) => ({ cells, number: i + 2 }));
  const shown = [
    ...numbered.slice(0, TOP),
    ...numbered
      .slice(TOP)
      .filter(({ number }) => faulty.has(number))
      .slice(0, MOST_FAULTY),
  ];
  const hasFault = (number: number, column: string): boolean =>
    faults.some((fault) => fault.row === number && (fault.column === column || fault.column === null));
  return (
    <div className="plant-table" tabIndex={0} role="region" aria-label="Preview of the table">
      <table className="numbers">
        <thead>
          <tr>
            <th scope="col">row</th>
            {heading.map((name, i) => (
              <th key={i} scope="col" data-fault={hasFault(1, name) || undefined}>
                {name}
              </th>
            ))}
          </tr>
        </thead>
        <tbody>
          {shown.map(({ cells, number }) => (
            <tr key={number}>
              <th scope="row">
                {number} {faulty.has(number) && <TriangleAlert aria-label="has a fault" size={12} />}
              </th>
              {cells.map((cell, i) => (
                <td key={i} data-fault={hasFault(number, heading[i] ?? '') || undefined}>
                  {cell}
                </td>
              ))}
            </tr>
          ))}
        </tbody>
      </table>
      {shown.length < rows.length && <p className="quiet">… {rows.length - shown.length} more rows</p>}
    </div>
  );
}
