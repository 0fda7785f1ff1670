/**
 * Rows of readings, pasted or typed: what was understood is shown as a table, and each fault by its row and column.
 *
 *     <PasteTable
 *       label="Thickness at the witnesses"
 *       columns={COLUMNS} // [{ name: 'witness', holds: 'text', isNeeded: true }, { name: 'thickness', holds: 'length', … }]
 *       example={'witness,thickness\n,nm\nrim 0,118\nhub,72'}
 *       text={text}
 *       onText={setText}
 *     />
 *
 * The text is the owner's: keep it in a store to keep it over visits. readReadings(text, columns) gives the numbers, SI.
 */
import { TriangleAlert } from 'lucide-react';
import { useDeferredValue, useId, useMemo } from 'react';
import { readReadings, type ReadingColumn, type ReadingFault, type Readings } from '../format/readings.ts';
import './pasteTable.css';

interface PasteTableProps {
  readonly label: string;
  /** columns that the table may have, as a constant */
  readonly columns: readonly ReadingColumn[];
  /** offered while there is nothing */
  readonly example: string;
  readonly text: string;
  readonly onText: (text: string) => void;
}

/** Rows shown from the top, and rows with faults shown wherever they are. */
const TOP = 8;
const MOST_FAULTY = 20;
/** Faults told; more are counted. */
const MOST_FAULTS = 12;

function sentence({ row, column, message }: ReadingFault): string {
  const places = [...(row === null ? [] : [`row ${row}`]), ...(column === null ? [] : [`column ${column}`])].join(', ');
  return places === '' ? message : `${places.charAt(0).toUpperCase()}${places.slice(1)}: ${message}`;
}

function Faults({ faults }: { readonly faults: readonly ReadingFault[] }) {
  return (
    <>
      <p className="paste-count">
        <TriangleAlert aria-hidden="true" size={16} /> {faults.length === 1 ? 'One fault' : `${faults.length} faults`}
      </p>
      <ul>
        {faults.slice(0, MOST_FAULTS).map((fault, i) => (
          <li key={i}>{sentence(fault)}</li>
        ))}
        {faults.length > MOST_FAULTS && <li>… and {faults.length - MOST_FAULTS} more</li>}
      </ul>
    </>
  );
}

function Preview({ heading, rows, faults }: Readings) {
  const faulty = new Set(faults.map(({ row }) => row));
  const shown = [
    ...rows.slice(0, TOP),
    ...rows
      .slice(TOP)
      .filter(({ number }) => faulty.has(number))
      .slice(0, MOST_FAULTY),
  ];
  const isFaulty = (number: number, name: string): boolean =>
    faults.some(
      ({ row, column }) => row === number && (column === null || name.toLowerCase().startsWith(column.toLowerCase())),
    );
  return (
    <div className="paste-preview" tabIndex={0} role="region" aria-label="What was understood">
      <table className="numbers">
        <thead>
          <tr>
            <th scope="col">row</th>
            {heading.map((name, i) => (
              <th key={i} scope="col">
                {name}
              </th>
            ))}
          </tr>
        </thead>
        <tbody>
          {shown.map(({ number, cells }) => (
            <tr key={number}>
              <th scope="row">
                {number} {faulty.has(number) && <TriangleAlert aria-label="has a fault" size={12} />}
              </th>
              {heading.map((name, i) => (
                <td key={i} data-fault={isFaulty(number, name) || undefined}>
                  {cells[i] ?? ''}
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

export function PasteTable({ label, columns, example, text, onText }: PasteTableProps) {
  const id = useId();
  const shownText = useDeferredValue(text);
  const read = useMemo(() => readReadings(shownText, columns), [shownText, columns]);
  const isEmpty = shownText.trim() === '';
  const [needed, others] = [true, false].map((isNeeded) =>
    columns.flatMap((column) => (column.isNeeded === isNeeded ? column.name : [])).join(', '),
  );
  return (
    <div className="paste-table">
      <label htmlFor={`${id}-text`}>{label}</label>
      <p id={`${id}-help`} className="quiet">
        A heading row, a unit row, then the readings; columns parted by commas, semicolons or tabs. Needed: {needed}
        {others === '' ? '' : `; may be there: ${others}`}. Units may stand in the cells instead.
      </p>
      <textarea
        id={`${id}-text`}
        rows={6}
        spellCheck={false}
        value={text}
        aria-describedby={`${id}-help ${id}-faults`}
        onChange={({ target }) => onText(target.value)}
      />
      {isEmpty && (
        <button type="button" onClick={() => onText(example)}>
          Start from an example
        </button>
      )}
      <div id={`${id}-faults`} className="paste-faults" aria-live="polite">
        {!isEmpty && read.faults.length === 0 && <p>{read.readings.length} readings, no faults.</p>}
        {read.faults.length > 0 && <Faults faults={read.faults} />}
      </div>
      {read.rows.length > 0 && <Preview {...read} />}
    </div>
  );
}
