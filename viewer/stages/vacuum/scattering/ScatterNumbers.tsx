/** Where the vapour ends in gas, and what becomes of the coat. */
import type { Counted, PlaceShare } from '../../../../engine/gas/scatterSummary.ts';
import type { Plant } from '../../../../engine/index.ts';
import { estimateText, estimate_percent } from '../../../format/numbers.ts';
import { scientific } from '../../../format/scientific.ts';
import { shownDecimals, shownText, thicknessUnit } from '../../../charts/shownUnits.ts';
import { NumbersTable, type NumberRow } from '../../../panels/NumbersTable.tsx';
import { useUnits, type Units } from '../../../state/units.ts';
import type { ShotInGas } from './shotInGas.ts';
import { useScatter } from './scatterStore.ts';

const asEstimate = ({ value, standardError }: Counted) => ({ value, error: standardError });

function shareRow(label: string, counted: Counted, detail?: string): NumberRow {
  return {
    label,
    ...(detail !== undefined && { detail }),
    ...estimate_percent(asEstimate(counted)),
    unit: '%',
  };
}

const PLACES: Readonly<Record<Exclude<PlaceShare['kind'], 'obstacle'>, string>> = {
  mirror: 'Mirror',
  'tank side': 'Side of the tank',
  'end behind the mirror': 'End behind the mirror',
  'end before the mirror': 'End before the mirror',
  glass: 'Edge and back of the glass',
  shields: 'Shields',
};

/** Both ways of arriving at a place, counted together: they exclude each other, so errors add in quadrature. */
function both({ ballistic, scattered }: PlaceShare): Counted {
  return {
    value: ballistic.value + scattered.value,
    standardError: Math.hypot(ballistic.standardError, scattered.standardError),
  };
}

function placeRows({ scattered, vacuum }: ShotInGas): NumberRow[] {
  const { summary } = scattered;
  return [
    shareRow('Mirror, straight', summary.ballisticOnMirror),
    shareRow('Mirror, scattered', summary.scatteredOnMirror),
    ...summary.places
      .filter((place) => place.kind !== 'mirror' && both(place).value > 0)
      .map((place) =>
        shareRow(
          place.kind === 'obstacle' ? (vacuum.plant.obstacleNames[place.obstacle] ?? 'obstacle') : PLACES[place.kind],
          both(place),
        ),
      ),
    shareRow('Lost in all', summary.lost, 'anywhere but on the mirror'),
  ];
}

function coatRows({ inGas, vacuum }: ShotInGas, units: Units): NumberRow[] {
  const unit = thicknessUnit(units);
  const { statistics: s, standardErrors: e } = inGas;
  const before = vacuum.statistics;
  const thickness = (label: string, value: number, error: number, old: number): NumberRow => ({
    label,
    detail: `in vacuum ${shownText(old * 1e9, unit)}`,
    ...estimateText({ value, error }, 1e9 * unit.factor, shownDecimals(unit, 2)),
    unit: unit.unit,
  });
  const evenness = estimate_percent({ value: s.uniformity.value, error: e.uniformity });
  return [
    thickness('Mean', s.mean.value, e.mean, before.mean.value),
    thickness('Minimum', s.minimum.value, e.minimum, before.minimum.value),
    thickness('Maximum', s.maximum.value, e.maximum, before.maximum.value),
    {
      label: 'Uniformity',
      detail: `in vacuum ±${scientific(100 * before.uniformity.value, 3)} %`,
      ...evenness,
      value: `±${evenness.value}`,
      unit: '%',
    },
    shareRow('Of the coat, scattered', inGas.scatteredShare),
  ];
}

interface ScatterNumbersProps {
  /** on the page; the numbers may be of an earlier one */
  readonly plant: Plant;
}

export function ScatterNumbers({ plant }: ScatterNumbersProps) {
  const units = useUnits();
  const shot = useScatter((state) => state.shot);
  if (!shot) return null;
  const { scattered } = shot;
  const { summary, problem, isReached } = scattered;
  return (
    <>
      <NumbersTable
        caption="Coat through gas"
        {...(shot.vacuum.plant !== plant && { captionDetail: 'of an earlier design' })}
        labelHeading="over the clear aperture"
        errorHeading="standard error"
        rows={coatRows(shot, units)}
      >
        <p>
          {scientific(summary.atoms, 4)} atoms, {scientific(summary.collisionsPerAtom, 2)} collisions each, seed{' '}
          {problem.seed}. Largest error of a cell {scientific(100 * summary.cellError, 2)} %
          {isReached ? ', as wanted.' : ': the atoms ran out before the wanted error was reached.'} The cross-section,
          known to ±25 %, is not in these errors.
        </p>
      </NumbersTable>
      <NumbersTable
        caption="Where the vapour ends"
        labelHeading="share of all evaporated"
        errorHeading="standard error"
        rows={placeRows(shot)}
      />
    </>
  );
}
