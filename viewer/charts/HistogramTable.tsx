/** Share of the clear aperture against thickness, as a table. */
import type { ShownUnit } from '../../workers/picture/mapSubject.ts';
import { fixed } from '../format/numbers.ts';
import type { HistogramData } from './areaShares.ts';
import { shownText } from './shownUnits.ts';

interface HistogramTableProps {
  readonly data: HistogramData;
  readonly unit: ShownUnit;
}

export function HistogramTable({ data, unit }: HistogramTableProps) {
  return (
    <details className="chart-table cornered">
      <summary>
        <span className="visually-hidden">Area by thickness as a </span>Table
      </summary>
      <table className="numbers">
        <thead>
          <tr>
            <th scope="col">From</th>
            <th scope="col">to below</th>
            <th scope="col">Share of area, %</th>
          </tr>
        </thead>
        <tbody>
          {data.bins.map(({ low, high, share }) => (
            <tr key={low}>
              <th scope="row">{shownText(low, unit, 2)}</th>
              <td>{shownText(high, unit, 2)}</td>
              <td>{fixed(100 * share, 2)}</td>
            </tr>
          ))}
        </tbody>
      </table>
    </details>
  );
}
