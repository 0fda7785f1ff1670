/** The radial profiles of two coats in one plot: the first full, the second dashed. */
import { useEffect, useId, useMemo, useRef } from 'react';
import { uPlot } from './plot.ts';
import 'uplot/dist/uPlot.min.css';
import type { Coat } from '../../engine/index.ts';
import type { ShownUnit } from '../../workers/picture/mapSubject.ts';
import { fixed } from '../format/numbers.ts';
import { useUnits } from '../state/units.ts';
import { useColors, type Colors } from '../state/useColors.ts';
import './charts.css';
import { compareData, profileAt, type CompareData } from './compareData.ts';
import { lengthUnit, shownText, thicknessUnit } from './shownUnits.ts';
import './keySigns.css';

const FONT = '12px system-ui, sans-serif';
const DASH = [8, 5];
const ROWS = 15;

interface ProfileCompareProps {
  readonly a: Coat;
  readonly b: Coat;
  readonly nameA?: string;
  readonly nameB?: string;
}

interface PlotUnits {
  readonly thickness: ShownUnit;
  readonly length: ShownUnit;
}

function optionsOf(colors: Colors, units: PlotUnits, size: { width: number; height: number }): uPlot.Options {
  const axis = {
    stroke: colors['text-2'],
    font: FONT,
    grid: { stroke: colors.line, width: 0.5 },
    ticks: { stroke: colors.line, width: 1, size: 4 },
  };
  const points = { show: false };
  const label = (unit: ShownUnit) => (_: uPlot, ticks: number[]) =>
    ticks.map((tick) => `${Number((tick * unit.factor).toPrecision(4))} ${unit.unit}`);
  return {
    ...size,
    pxAlign: false,
    padding: [8, 16, 0, 0],
    legend: { show: false },
    cursor: { show: false },
    scales: { x: { time: false } },
    axes: [
      { ...axis, size: 26, gap: 2, values: label(units.length) },
      { ...axis, size: 64, gap: 4, space: 24, values: label(units.thickness) },
    ],
    series: [
      {},
      { stroke: colors.text, width: 2, points, spanGaps: true },
      { stroke: colors.accent, width: 2.5, dash: DASH, points, spanGaps: true },
    ],
  };
}

function Plot({ data, units, description }: { data: CompareData; units: PlotUnits; description: string }) {
  const holder = useRef<HTMLDivElement>(null);
  const colors = useColors();
  useEffect(() => {
    const element = holder.current;
    if (!element) return;
    const size = () => ({ width: element.clientWidth, height: element.clientHeight });
    const { radius, a_nm, b_nm } = data;
    const plot = new uPlot(
      optionsOf(colors, units, size()),
      [radius, a_nm, b_nm] as unknown as uPlot.AlignedData,
      element,
    );
    const observer = new ResizeObserver(() => plot.setSize(size()));
    observer.observe(element);
    return () => {
      observer.disconnect();
      plot.destroy();
    };
  }, [data, units, colors]);
  return <div className="chart-plate" ref={holder} role="img" aria-label={description} />;
}

/** Evenly spaced radii over both profiles. */
function tableRadii(data: CompareData): number[] {
  const [first = 0, last = 0] = [data.radius[0], data.radius.at(-1)];
  return Array.from({ length: ROWS }, (_, i) => first + (i * (last - first)) / (ROWS - 1));
}

export function ProfileCompare({ a, b, nameA = a.plant.name, nameB = b.plant.name }: ProfileCompareProps) {
  const userUnits = useUnits();
  const id = useId();
  const data = useMemo(() => compareData(a, b), [a, b]);
  const units = useMemo(() => ({ thickness: thicknessUnit(userUnits), length: lengthUnit(userUnits) }), [userUnits]);
  const mean = ({ statistics }: Coat): string => shownText(statistics.mean.value * 1e9, units.thickness);
  const cell = (coat: Coat, r: number): string => {
    const value = profileAt(coat, r) * 1e9;
    return Number.isNaN(value) ? '–' : shownText(value, units.thickness, 2);
  };
  return (
    <section className="panel compare" aria-labelledby={id}>
      <div className="chart-head">
        <h2 id={id}>Radial profiles</h2>
        <ul className="profile-key">
          <li>
            <i className="line-sign strong" /> {nameA}
          </li>
          <li>
            <i className="line-sign strong dashed compare-second" /> {nameB}
          </li>
        </ul>
      </div>
      <Plot
        data={data}
        units={units}
        description={`Radial profiles, mean over azimuth: ${nameA} as a full line, average ${mean(a)}; ${nameB} dashed, average ${mean(b)}. Values are in the table.`}
      />
      <details className="chart-table cornered">
        <summary>
          <span className="visually-hidden">Radial profiles as a </span>Table
        </summary>
        <table className="numbers">
          <thead>
            <tr>
              <th scope="col">Radius, {units.length.unit}</th>
              <th scope="col">{nameA}</th>
              <th scope="col">{nameB}</th>
            </tr>
          </thead>
          <tbody>
            {tableRadii(data).map((r) => (
              <tr key={r}>
                <th scope="row">{fixed(r * units.length.factor, 3)}</th>
                <td>{cell(a, r)}</td>
                <td>{cell(b, r)}</td>
              </tr>
            ))}
          </tbody>
        </table>
      </details>
    </section>
  );
}
