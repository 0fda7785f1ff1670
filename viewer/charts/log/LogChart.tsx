/**
 * Lines over many decades: logarithmic both ways (or linear where an axis says so), told apart by dashes and by names at
 * their ends, with thresholds, measured readings, a read-out under the pointer, a table and its file.
 *
 *     <LogChart
 *       title="Pump-down"
 *       description="Pressure against time: reaches 1e-5 mbar after 4.2 h."
 *       data={{
 *         xAxis: { label: 'Time', unit: 'min' },
 *         yAxis: { label: 'Pressure', unit: 'mbar' },
 *         series: [{ label: 'total', x: minutes, y: pressures }],
 *         points: [{ label: 'gauge', x: readAt, y: read }],
 *         thresholds: [{ axis: 'y', value: 1e-5, label: 'wanted' }],
 *       }}
 *       fileName="tarn-hill-pump-down"
 *     />
 *
 * Numbers are in the units that the axes name: convert them to the user's units first, and keep `data` the same object
 * (useMemo) as long as nothing changes. It fills the height that it is given, 160 px at least.
 */
import { FileDown } from 'lucide-react';
import { useEffect, useId, useMemo, useRef, useState, type ReactNode } from 'react';
import 'uplot/dist/uPlot.min.css';
import { textFile } from '../../export/fileKinds.ts';
import { saveFile } from '../../export/saveFile.ts';
import { scientific } from '../../format/scientific.ts';
import { useColors } from '../../state/useColors.ts';
import { announce } from '../../state/variants/announcement.ts';
import '../charts.css';
import { uPlot } from '../plot.ts';
import { SIGNS } from './drawLog.ts';
import './log.css';
import type { LogAxis, LogChartData } from './logChartTypes.ts';
import { logOptions } from './logOptions.ts';
import { logCsv, logTable, readLine, shownRows, type LogTable } from './logTable.ts';

const ROWS = 25;
const SIGN_TEXT = { circle: '○', square: '□', diamond: '◇' } as const;

interface LogChartProps {
  readonly title: string;
  /** what the chart says, in a sentence, for those who do not see it */
  readonly description: string;
  readonly data: LogChartData;
  /** of the table's file, without its ending */
  readonly fileName: string;
  /** stands in the head beside the title, such as a choice of what is shown */
  readonly children?: ReactNode;
}

const withUnit = (value: number, { unit }: LogAxis): string =>
  unit === '' ? scientific(value) : `${scientific(value)} ${unit}`;

/** What all lines and readings say at a row of the table. */
function readOut(table: LogTable, row: number, { xAxis, yAxis }: LogChartData): string {
  const read = table.columns.flatMap((column, i) => {
    const value = i < table.lineCount ? readLine(table, i, row, [xAxis, yAxis]) : (column[row] ?? null);
    return value === null ? [] : `${table.heads[i + 1]!.label} ${withUnit(value, yAxis)}`;
  });
  return `${withUnit(table.x[row]!, xAxis)}: ${read.join(', ')}`;
}

interface PlotProps {
  readonly data: LogChartData;
  readonly table: LogTable;
  readonly description: string;
  readonly onHover: (row: number | null) => void;
}

function Plot({ data, table, description, onHover }: PlotProps) {
  const holder = useRef<HTMLDivElement>(null);
  const colors = useColors();
  useEffect(() => {
    const element = holder.current;
    if (!element) return;
    const size = () => ({ width: element.clientWidth, height: element.clientHeight });
    const plot = new uPlot(
      logOptions(data, table, colors, size(), onHover),
      [table.x, ...table.columns] as unknown as uPlot.AlignedData,
      element,
    );
    const observer = new ResizeObserver(() => plot.setSize(size()));
    observer.observe(element);
    return () => {
      observer.disconnect();
      plot.destroy();
    };
  }, [data, table, colors, onHover]);
  return <div className="chart-plate" ref={holder} role="img" aria-label={`${description} Values are in the table.`} />;
}

function TableView({ title, table, fileName }: { title: string; table: LogTable; fileName: string }) {
  const save = async (): Promise<void> => {
    const content = Promise.resolve(textFile(logCsv(table), 'csv'));
    const saved = await saveFile(content, `${fileName}.csv`, 'csv');
    if (saved !== null) announce(`Saved as ${saved}.`);
  };
  return (
    <details className="chart-table cornered">
      <summary>
        <span className="visually-hidden">{title} as a </span>Table
      </summary>
      <button type="button" onClick={() => void save()}>
        <FileDown aria-hidden="true" size={16} /> Save all {table.x.length} rows as CSV
      </button>
      <table className="numbers">
        <thead>
          <tr>
            {table.heads.map(({ label, unit }) => (
              <th key={label} scope="col">
                {unit === '' ? label : `${label}, ${unit}`}
              </th>
            ))}
          </tr>
        </thead>
        <tbody>
          {shownRows(table, ROWS).map((row) => (
            <tr key={row}>
              <th scope="row">{scientific(table.x[row]!, 4)}</th>
              {table.columns.map((column, i) => (
                <td key={i}>{column[row] === null || column[row] === undefined ? '–' : scientific(column[row], 4)}</td>
              ))}
            </tr>
          ))}
        </tbody>
      </table>
    </details>
  );
}

export function LogChart({ title, description, data, fileName, children }: LogChartProps) {
  const id = useId();
  const table = useMemo(() => logTable(data), [data]);
  const [hovered, setHovered] = useState<number | null>(null);
  const { points = [] } = data;
  const isRead = hovered !== null && hovered < table.x.length;
  return (
    <section className="panel log-chart" aria-labelledby={id}>
      <div className="chart-head">
        <h2 id={id}>{title}</h2>
        {children}
        <p className="quiet">
          {isRead
            ? readOut(table, hovered, data)
            : points.map(({ label, sign }, i) => `${SIGN_TEXT[sign ?? SIGNS[i % SIGNS.length]!]} ${label}`).join('  ')}
        </p>
      </div>
      {table.x.length > 0 ? (
        <>
          <Plot data={data} table={table} description={description} onHover={setHovered} />
          <TableView title={title} table={table} fileName={fileName} />
        </>
      ) : (
        <p className="chart-missing">There is nothing to draw yet.</p>
      )}
    </section>
  );
}
