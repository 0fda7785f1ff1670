/** A table of numbers, each with its unit, its error and what it means. */
import type { ReactNode } from 'react';

export interface NumberRow {
  readonly label: string;
  /** small, after the label: where it is found, what it is of */
  readonly detail?: string;
  /** what the number is, in a few words; a tip on the label, spoken with it */
  readonly help?: string;
  /** as the page writes it, without its unit: see format/numbers.ts */
  readonly value: string;
  /** "± 0.03" or "< 0.01"; empty where the number is exact */
  readonly error?: string;
  /** empty where it has none */
  readonly unit?: string;
}

interface NumbersTableProps {
  readonly caption: string;
  /** small, after the caption */
  readonly captionDetail?: string;
  readonly rows: readonly NumberRow[];
  /** heads the column of labels, such as "over the clear aperture" */
  readonly labelHeading: string;
  /** heads the column of errors, which is left out if no row has one */
  readonly errorHeading?: string;
  /** stands under the table: where the errors come from */
  readonly children?: ReactNode;
}

export function NumbersTable({
  caption,
  captionDetail,
  rows,
  labelHeading,
  errorHeading = 'numerical error',
  children,
}: NumbersTableProps) {
  const hasErrors = rows.some(({ error }) => error !== undefined && error !== '');
  return (
    <section className="panel" aria-label={caption}>
      <table className="numbers">
        <caption>
          {caption} {captionDetail !== undefined && <small>{captionDetail}</small>}
        </caption>
        <thead>
          <tr>
            <th scope="col">{labelHeading}</th>
            <th scope="col" {...(!hasErrors && { colSpan: 2 })}>
              value
            </th>
            {hasErrors && (
              <th scope="col" colSpan={2}>
                {errorHeading}
              </th>
            )}
          </tr>
        </thead>
        <tbody>
          {rows.map(({ label, detail, help, value, error = '', unit = '' }) => (
            <tr key={label}>
              <th scope="row" title={help}>
                {label} {detail !== undefined && <small>{detail}</small>}
              </th>
              <td className="value">{value}</td>
              {hasErrors && <td className="error">{error}</td>}
              <td className="unit">{unit}</td>
            </tr>
          ))}
        </tbody>
      </table>
      {children !== undefined && <div className="quiet">{children}</div>}
    </section>
  );
}
