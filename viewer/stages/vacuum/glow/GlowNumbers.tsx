/** Dose and energy of the glow discharge. */
import { inUnit } from '../../../../engine/index.ts';
import { scientific } from '../../../format/scientific.ts';
import { NumbersTable, type NumberRow } from '../../../panels/NumbersTable.tsx';
import { useUnits, type Units } from '../../../state/units.ts';
import type { GlowCase } from './glowCase.ts';

/** Per m² in per cm². */
const PER_CM2 = 1e-4;

function rowsOf({ settings, dose }: GlowCase, units: Units): NumberRow[] {
  const length = (metres: number): Pick<NumberRow, 'value' | 'unit'> => ({
    value: scientific(inUnit(metres, 'length', units.length), 3),
    unit: units.length,
  });
  return [
    {
      label: 'Ions',
      help: 'charge over area; electrons set free by the ions make the true number some percent less',
      value: scientific(dose.ions * PER_CM2, 3),
      unit: '1/cm²',
    },
    {
      label: 'Dose',
      help: 'current density times time',
      value: scientific(dose.currentDensity * settings.duration * 1e3 * PER_CM2, 3),
      unit: 'mA s/cm²',
    },
    {
      label: 'Energy, at most',
      help: 'all of the voltage counted; most of it is lost in collisions',
      value: scientific(dose.energy * PER_CM2, 3),
      unit: 'J/cm²',
    },
    { label: 'Current density', value: scientific(dose.currentDensity * 1e6 * PER_CM2, 3), unit: 'µA/cm²' },
    { label: 'Power', value: scientific(dose.power, 3), unit: 'W' },
    { label: 'Area', value: scientific(settings.area, 3), unit: 'm²' },
    { label: 'Dark space at the electrode', help: 'normal cathode fall', ...length(dose.fallThickness) },
    { label: 'Mean free path', ...length(dose.freePath) },
  ];
}

export function GlowNumbers({ glow }: { readonly glow: GlowCase }) {
  const units = useUnits();
  return (
    <NumbersTable caption="Glow discharge" labelHeading="on the glass" rows={rowsOf(glow, units)}>
      <p>
        <code>ions = I t/(e A)</code>, <code>energy ≤ U I t/A</code>; the elementary charge is exact (SI Brochure,
        2019). Cathode fall: A. von Engel; J. D. Cobine, ±20 %, from memory.
      </p>
    </NumbersTable>
  );
}
