/** What the colours mean: the mapped quantity with its unit, and the values that matter marked. */
import type { Coat } from '../../engine/index.ts';
import { fixed, tolerance } from '../format/numbers.ts';
import type { MappedQuantity } from '../state/mapView.ts';
import { useUnits } from '../state/units.ts';
import { colorGradient, type ColorScale } from './colorScale.ts';
import { decimalsOf, shareOn } from '../../workers/picture/valueScale.ts';
import { usePicture } from './picture.ts';
import { perNanometre } from './sceneText.ts';
import './legend.css';

const GRADIENT = colorGradient();
const at = (share: number) => ({ bottom: `${(100 * share).toFixed(2)}%` });
const MARK_DECIMALS = 2;

interface Mark {
  readonly key: 'upper' | 'mean' | 'lower';
  readonly text: string;
  /** in the unit of the field */
  readonly value: number;
}

/** Values worth marking: the mean and its tolerance, or the target. */
function marksOf({ statistics, plant }: Coat, quantity: MappedQuantity): Mark[] {
  const mean = statistics.mean.value * 1e9;
  const limit = plant.film.tolerance;
  switch (quantity) {
    case 'thickness':
      return [
        { key: 'upper', text: `+${tolerance(limit).slice(1)}`, value: mean * (1 + limit) },
        { key: 'mean', text: 'mean', value: mean },
        { key: 'lower', text: `\u2212${tolerance(limit).slice(1)}`, value: mean * (1 - limit) },
      ];
    case 'deviation':
      return [{ key: 'mean', text: 'target', value: 0 }];
    default:
      return [];
  }
}

const isOnScale = ({ low, high }: ColorScale, value: number): boolean => value >= low && value <= high;

export function ColorLegend() {
  const picture = usePicture((state) => state.picture);
  const units = useUnits();
  if (!picture) return null;
  const { coat, quantity, field, scale } = picture;
  const marks = marksOf(coat, quantity);
  const beyond = marks.filter(({ value }) => !isOnScale(scale, value)).map(({ text }) => text);
  const isLength = field.unit === 'nm';
  const factor = isLength ? perNanometre(units) : 1;
  const unit = isLength ? units.thickness : field.unit;
  const decimals = decimalsOf(scale.ticks.map((tick) => tick * factor));
  const hasGaps = quantity !== 'thickness' && quantity !== 'deviation' && field.values.some(Number.isNaN);
  return (
    <div className="legend" data-keep-clear>
      <p className="legend-title">
        {field.label}, {unit}
      </p>
      <div className="legend-body">
        <div className="legend-marks">
          {marks
            .filter(({ value }) => isOnScale(scale, value))
            .map(({ key, text, value }) => (
              <span
                key={key}
                className={`legend-mark ${key}`}
                style={at(shareOn(scale, value))}
                title={`${fixed(value * factor, MARK_DECIMALS)} ${unit}`}
              >
                {text}
              </span>
            ))}
        </div>
        <div className="legend-bar" style={{ backgroundImage: GRADIENT }} />
        <div className="legend-ticks">
          {scale.ticks.map((tick) => (
            <span key={tick} className="legend-tick" style={at(shareOn(scale, tick))}>
              {fixed(tick * factor, decimals)}
            </span>
          ))}
        </div>
      </div>
      {beyond.length > 0 && <p className="legend-beyond">{beyond.join(' and ')} off the scale</p>}
      {hasGaps && <p className="legend-beyond">grey: nothing arrives</p>}
    </div>
  );
}
