/** The numbers of the coat, each with its numerical error. */
import type { Coat, Estimate } from '../../../engine/index.ts';
import { lengthUnit, shownDecimals, shownPlace, thicknessUnit } from '../../charts/shownUnits.ts';
import {
  estimateRatio,
  estimateText,
  estimate_percent,
  THICKNESS_DECIMALS,
  tolerance,
  type EstimateText,
} from '../../format/numbers.ts';
import { NumbersTable, type NumberRow } from '../../panels/NumbersTable.tsx';
import { useResult } from '../../state/resultStore.ts';
import { useUnits, type Units } from '../../state/units.ts';

type Numbers = Pick<NumberRow, 'value' | 'error' | 'unit'>;

const inPercent = (estimate: Estimate): Numbers & EstimateText => ({ ...estimate_percent(estimate), unit: '%' });

/** A thickness in the user's unit. */
function thickness(estimate: Estimate, units: Units): Numbers {
  const shown = thicknessUnit(units);
  const text = estimateText(estimate, 1e9 * shown.factor, shownDecimals(shown, THICKNESS_DECIMALS));
  return { ...text, unit: shown.unit };
}

function rowsOf({ statistics: s, plant }: Coat, units: Units): NumberRow[] {
  const place = ([x, y]: readonly [number, number, number]): string =>
    shownPlace(x - plant.shape.centerX, y, lengthUnit(units));
  const uniformity = inPercent(s.uniformity);
  return [
    { label: 'Mean', help: 'over the clear aperture, weighted by area', ...thickness(s.mean, units) },
    {
      label: 'Minimum',
      help: 'thinnest place of the clear aperture',
      detail: place(s.minimum.position),
      ...thickness(s.minimum, units),
    },
    {
      label: 'Maximum',
      help: 'thickest place of the clear aperture',
      detail: place(s.maximum.position),
      ...thickness(s.maximum, units),
    },
    { label: 'Uniformity', help: '± (max − min) / (max + min)', ...uniformity, value: `±${uniformity.value}` },
    { label: 'RMS', help: 'standard deviation / mean', ...inPercent(s.rms) },
    { label: 'Edge ratio', help: 'mean over the outermost 2 % of the radius / mean', ...estimateRatio(s.edgeRatio) },
    { label: 'Collection', help: 'mass on the mirror / mass evaporated', ...inPercent(s.collection) },
    {
      label: `Area within ${tolerance(plant.film.tolerance)}`,
      help: 'share of the clear aperture within the tolerance of the mean',
      ...inPercent(s.fractionInside),
    },
  ];
}

export function Statistics() {
  const coat = useResult((state) => state.coat);
  const units = useUnits();
  if (!coat) return null;
  return <NumbersTable caption="Statistics" labelHeading="over the clear aperture" rows={rowsOf(coat, units)} />;
}
