/** The numbers, each with its numerical error. */
import type { Coat, Estimate } from '../../engine/index.ts';
import {
  estimateRatio,
  estimate_nm,
  estimate_percent,
  polarPlace,
  tolerance,
  type EstimateText,
} from '../format/numbers.ts';
import { useResult } from '../state/resultStore.ts';

interface Row {
  readonly name: string;
  readonly explanation: string;
  readonly place?: string;
  /** written before the value */
  readonly sign?: string;
  readonly text: EstimateText;
  readonly unit: string;
}

function rowsOf({ statistics: s, plant }: Coat): Row[] {
  const place = ([x, y]: readonly [number, number, number]): string => polarPlace(x - plant.shape.centerX, y);
  const inPercent = (estimate: Estimate): Pick<Row, 'text' | 'unit'> => ({
    text: estimate_percent(estimate),
    unit: '%',
  });
  return [
    { name: 'Mean', explanation: 'over the clear aperture, weighted by area', text: estimate_nm(s.mean), unit: 'nm' },
    {
      name: 'Minimum',
      explanation: 'thinnest place of the clear aperture',
      place: place(s.minimum.position),
      text: estimate_nm(s.minimum),
      unit: 'nm',
    },
    {
      name: 'Maximum',
      explanation: 'thickest place of the clear aperture',
      place: place(s.maximum.position),
      text: estimate_nm(s.maximum),
      unit: 'nm',
    },
    { name: 'Uniformity', explanation: '± (max − min) / (max + min)', sign: '±', ...inPercent(s.uniformity) },
    { name: 'RMS', explanation: 'standard deviation / mean', ...inPercent(s.rms) },
    {
      name: 'Edge ratio',
      explanation: 'mean over the outermost 2 % of the radius / mean',
      text: estimateRatio(s.edgeRatio),
      unit: '',
    },
    { name: 'Collection', explanation: 'mass on the mirror / mass evaporated', ...inPercent(s.collection) },
    {
      name: `Area within ${tolerance(plant.film.tolerance)}`,
      explanation: 'share of the clear aperture within the tolerance of the mean',
      ...inPercent(s.fractionInside),
    },
  ];
}

export function Statistics() {
  const coat = useResult((state) => state.coat);
  if (!coat) return null;
  return (
    <section className="panel" aria-label="Statistics of the coat">
      <table className="numbers">
        <caption>Statistics</caption>
        <thead>
          <tr>
            <th scope="col">over the clear aperture</th>
            <th scope="col">value</th>
            <th scope="col" colSpan={2}>
              numerical error
            </th>
          </tr>
        </thead>
        <tbody>
          {rowsOf(coat).map(({ name, explanation, place, sign, text, unit }) => (
            <tr key={name}>
              <th scope="row" title={explanation}>
                {name} {place !== undefined && <small>{place}</small>}
              </th>
              <td className="value">
                {sign}
                {text.value}
              </td>
              <td className="error">{text.error}</td>
              <td className="unit">{unit}</td>
            </tr>
          ))}
        </tbody>
      </table>
    </section>
  );
}
