/** What the colours mean: thickness in nanometres, with the mean and its tolerance marked. */
import type { Coat } from '../../engine/index.ts';
import { fixed, nm, tolerance } from '../format/numbers.ts';
import { colorGradient, shareOf, type ColorScale } from './colorScale.ts';

const GRADIENT = colorGradient();
const at = (share: number) => ({ bottom: `${(100 * share).toFixed(2)}%` });

interface ColorLegendProps {
  readonly coat: Coat;
  readonly scale: ColorScale;
}

export function ColorLegend({ coat, scale }: ColorLegendProps) {
  const mean = coat.statistics.mean.value;
  const limit = coat.plant.film.tolerance;
  const marks = [
    { key: 'upper', text: `+${tolerance(limit).slice(1)}`, value: mean * (1 + limit) },
    { key: 'mean', text: 'mean', value: mean },
    { key: 'lower', text: `\u2212${tolerance(limit).slice(1)}`, value: mean * (1 - limit) },
  ];
  const isOnScale = ({ value }: { readonly value: number }): boolean =>
    value * 1e9 >= scale.low_nm && value * 1e9 <= scale.high_nm;
  const beyond = marks.filter((mark) => !isOnScale(mark)).map(({ text }) => text);
  const decimals = Math.max(0, ...scale.ticks_nm.map((tick) => (String(tick).split('.')[1] ?? '').length));
  return (
    <div className="legend">
      <p className="legend-title">Thickness, nm</p>
      <div className="legend-body">
        <div className="legend-marks">
          {marks.filter(isOnScale).map(({ key, text, value }) => (
            <span key={key} className={`legend-mark ${key}`} style={at(shareOf(scale, value * 1e9))} title={nm(value)}>
              {text}
            </span>
          ))}
        </div>
        <div className="legend-bar" style={{ backgroundImage: GRADIENT }} />
        <div className="legend-ticks">
          {scale.ticks_nm.map((tick) => (
            <span key={tick} className="legend-tick" style={at(shareOf(scale, tick))}>
              {fixed(tick, decimals)}
            </span>
          ))}
        </div>
      </div>
      {beyond.length > 0 && <p className="legend-beyond">{beyond.join(' and ')} off the scale</p>}
    </div>
  );
}
