/** The numbers that decide go or no-go. */
import { inUnit } from '../../../../engine/index.ts';
import { scientific } from '../../../format/scientific.ts';
import { NumbersTable, type NumberRow } from '../../../panels/NumbersTable.tsx';
import { useUnits, type Units } from '../../../state/units.ts';
import type { VacuumState } from '../useVacuum.ts';
import { durationText } from '../vacuumText.ts';

function rowsOf({ plant, gas, film, pumping }: VacuumState, units: Units): NumberRow[] {
  const share = (value: number): string => scientific(100 * value, value > 0.99 ? 5 : 3);
  return [
    {
      label: 'Pressure at firing',
      value: scientific(inUnit(plant.vacuum.pressure, 'pressure', units.pressure), 3),
      unit: units.pressure,
    },
    ...(gas
      ? [
          {
            label: 'Vapour that flies straight',
            help: 'meets no molecule over the mean distance from filaments to mirror',
            detail: `${share(gas.survival.low)} to ${share(gas.survival.high)} %`,
            value: share(gas.survival.value),
            unit: '%',
          },
        ]
      : []),
    ...(film
      ? [
          {
            label: 'Foreign molecules per aluminium atom',
            detail: 'thinnest place',
            value: scientific(film.worst, 2),
          },
        ]
      : []),
    ...(pumping
      ? [
          {
            label: 'Time until ready',
            help: 'from the start of pumping to the firing pressure',
            value: pumping.curve.reachedAt === null ? 'never' : durationText(pumping.curve.reachedAt),
          },
          {
            label: 'Most of the gas then',
            value: pumping.verdict.limit.loads[0]?.name ?? 'none',
          },
        ]
      : []),
  ];
}

export function GoNumbers({ state }: { readonly state: VacuumState }) {
  const units = useUnits();
  return (
    <NumbersTable caption="Go or no-go" labelHeading="for this shot" rows={rowsOf(state, units)}>
      <p>
        The range of the vapour is what is known of its collisions, ±25 %. Times follow from rates of surfaces that are
        known to a factor of 3 to 10.
      </p>
    </NumbersTable>
  );
}
