/** Share of the clear aperture against thickness. */
import { scaleLinear } from 'd3-scale';
import { useDeferredValue, useId, useMemo, useState } from 'react';
import type { Coat } from '../../engine/index.ts';
import type { ShownUnit } from '../../workers/picture/mapSubject.ts';
import { fixed, percent, tolerance } from '../format/numbers.ts';
import { useUnits } from '../state/units.ts';
import { histogramOf, type Bin, type HistogramData } from './areaShares.ts';
import './charts.css';
import { HistogramTable } from './HistogramTable.tsx';
import { shownText, thicknessUnit } from './shownUnits.ts';
import { useSize } from './useSize.ts';

const LEFT = 44;
const RIGHT = 12;
const TOP = 18;
const BOTTOM = 26;
/** Room that three names side by side need. */
const MARKS_ROOM = 100;

function describe({ bins, mean_nm, tolerance: limit, inside }: HistogramData, unit: ShownUnit): string {
  const fullest = bins.reduce((best, bin) => (bin.share > best.share ? bin : best));
  const text = (value: number): string => shownText(value, unit);
  return (
    `Area against thickness: ${percent(inside)} of the clear aperture within ${tolerance(limit)} of the mean, ` +
    `${text(mean_nm)}; most, ${percent(fullest.share)}, between ${text(fullest.low)} and ${text(fullest.high)}. ` +
    'All values are in the table.'
  );
}

interface BarsProps {
  readonly data: HistogramData;
  readonly unit: ShownUnit;
  readonly width: number;
  readonly height: number;
  readonly onHover: (bin: Bin | null) => void;
}

function Bars({ data, unit, width, height, onHover }: BarsProps) {
  const hatch = useId();
  const { bins, limits_nm, mean_nm } = data;
  const first = bins[0]!.low;
  const last = bins.at(-1)!.high;
  const x = scaleLinear([first, last], [LEFT, width - RIGHT]).clamp(true);
  const y = scaleLinear([0, Math.max(...bins.map(({ share }) => 100 * share))], [height - BOTTOM, TOP]).nice(4);
  const xTicks = x.ticks(Math.max(2, width / 90));
  const [bandLeft, bandRight] = limits_nm.map(x) as [number, number];
  const isIn = (value: number): boolean => value > first && value < last;
  const [low, high] = limits_nm;
  return (
    <svg width={width} height={height} aria-hidden="true" onPointerLeave={() => onHover(null)}>
      <pattern id={hatch} width="6" height="6" patternUnits="userSpaceOnUse" patternTransform="rotate(45)">
        <path className="hist-hatch" d="M0 0v6" />
      </pattern>
      {bandRight > bandLeft && (
        <rect className="hist-band" x={bandLeft} y={TOP} width={bandRight - bandLeft} height={height - BOTTOM - TOP} />
      )}
      {y.ticks(4).map((tick) => (
        <g key={tick} transform={`translate(0 ${y(tick)})`}>
          <path className="hist-grid" d={`M${LEFT} 0H${width - RIGHT}`} />
          <text className="end" x={LEFT - 6} y={4}>
            {tick} %
          </text>
        </g>
      ))}
      {bins.map((bin) => {
        const [left, right] = [x(bin.low), x(bin.high)];
        const isOutside = bin.high <= low || bin.low >= high;
        return (
          <g key={bin.low} onPointerEnter={() => onHover(bin)}>
            <rect className="hist-catch" x={left} y={TOP} width={right - left} height={height - BOTTOM - TOP} />
            <rect
              className={isOutside ? 'hist-bar outside' : 'hist-bar'}
              {...(isOutside && { fill: `url(#${hatch})` })}
              x={left + 0.5}
              y={y(100 * bin.share)}
              width={Math.max(0.5, right - left - 1)}
              height={height - BOTTOM - y(100 * bin.share)}
            />
          </g>
        );
      })}
      <path className="hist-axis" d={`M${LEFT} ${height - BOTTOM}H${width - RIGHT}`} />
      {xTicks.map((tick) => (
        <text key={tick} className="middle" x={x(tick)} y={height - BOTTOM + 16}>
          {shownText(tick, unit, 2)
            .replace(/(\.\d*?)0+(?= )/, '$1')
            .replace(/\.(?= )/, '')}
        </text>
      ))}
      {isIn(mean_nm) && <path className="hist-mean" d={`M${x(mean_nm)} ${TOP}V${height - BOTTOM}`} />}
      {limits_nm.filter(isIn).map((limit) => (
        <path key={limit} className="hist-limit" d={`M${x(limit)} ${TOP}V${height - BOTTOM}`} />
      ))}
      {[
        { value: mean_nm, text: 'mean' },
        { value: low, text: `\u2212${tolerance(data.tolerance).slice(1)}` },
        { value: high, text: `+${tolerance(data.tolerance).slice(1)}` },
      ]
        .filter(({ value, text }) => isIn(value) && (text !== 'mean' || x(high) - x(low) > MARKS_ROOM))
        .map(({ value, text }) => (
          <text key={text} className="middle" x={x(value)} y={TOP - 6}>
            {text}
          </text>
        ))}
    </svg>
  );
}

export function AreaHistogram({ coat }: { readonly coat: Coat }) {
  const shownCoat = useDeferredValue(coat);
  const data = useMemo(() => histogramOf(shownCoat), [shownCoat]);
  const unit = thicknessUnit(useUnits());
  const [holder, { width, height }] = useSize<HTMLDivElement>();
  const [hovered, setHovered] = useState<Bin | null>(null);
  const id = useId();
  return (
    <section className="panel histogram" aria-labelledby={id}>
      <div className="chart-head">
        <h2 id={id}>Area by thickness</h2>
        <p className="quiet">
          {hovered
            ? `${shownText(hovered.low, unit, 2)} to ${shownText(hovered.high, unit, 2)}: ${fixed(100 * hovered.share, 2)} % of the area`
            : `${percent(data.inside)} of the clear aperture within ${tolerance(data.tolerance)}; hatched bars lie outside`}
        </p>
      </div>
      <div className="chart-plate" ref={holder} role="img" aria-label={describe(data, unit)}>
        {width > 0 && <Bars data={data} unit={unit} width={width} height={height} onHover={setHovered} />}
      </div>
      <HistogramTable data={data} unit={unit} />
    </section>
  );
}
