/** The numbers of the residual gas, each with what the model may be wrong by. */
import { GASES } from '../../../../engine/gas/gases.ts';
import { MOLECULAR_ABOVE, VISCOUS_BELOW } from '../../../../engine/gas/regime.ts';
import { inUnit } from '../../../../engine/index.ts';
import { scientific } from '../../../format/scientific.ts';
import { NumbersTable, type NumberRow } from '../../../panels/NumbersTable.tsx';
import { useUnits, type Units } from '../../../state/units.ts';
import { durationText, pathText } from '../vacuumText.ts';
import type { Doubted, GasCase } from './gasCase.ts';
import { gasWord } from './residualGas.ts';

/** Relative spread of the sources of the gas's own free path. */
const GAS_PATH_DOUBT = 0.06;

/** "0.11 to 0.19", or one number where both ends are written alike. */
const between = (low: string, high: string): string => (low === high ? `≈ ${low}` : `${low} to ${high}`);

function pathRow(label: string, help: string, { value, low, high }: Doubted, units: Units): NumberRow {
  const shown = (metres: number, digits: number): string => scientific(inUnit(metres, 'length', units.length), digits);
  return { label, help, value: shown(value, 3), error: between(shown(low, 2), shown(high, 2)), unit: units.length };
}

function freePathRows({ report, vapourPath, survival }: GasCase, units: Units): NumberRow[] {
  const own = report.gasFreePath;
  const ownPath = { value: own, low: own / (1 + GAS_PATH_DOUBT), high: own * (1 + GAS_PATH_DOUBT) };
  const share = (value: number): string => scientific(100 * value, value > 0.99 ? 5 : 3);
  return [
    pathRow('Gas', 'mean free path of the gas’s own molecules, as hard spheres', ownPath, units),
    pathRow('Aluminium vapour', 'of its mean speed, as it leaves the metal at 1500 K', vapourPath, units),
    {
      label: 'Flies straight',
      help: 'share of the vapour that meets no molecule over the mean distance from filaments to mirror',
      value: share(survival.value),
      error: between(share(survival.low), share(survival.high)),
      unit: '%',
    },
  ];
}

const REGIME_LABELS = {
  'gas across the throw': 'Gas, filaments to mirror',
  'gas across the tank': 'Gas, across the tank',
  'vapour across the throw': 'Vapour, filaments to mirror',
} as const;

function knudsenRows({ report }: GasCase, units: Units): NumberRow[] {
  return report.regimes.map(({ what, length, knudsen, regime }) => ({
    label: REGIME_LABELS[what],
    detail: `${pathText(units, length)}: ${regime}`,
    help: 'mean free path over this length',
    value: scientific(knudsen, 3),
  }));
}

const PER_CM2 = 1e-4;
const PER_CM3 = 1e-6;

function surfaceRows({ report, impingementBy, density }: GasCase): NumberRow[] {
  const rate = (value: number): string => scientific(value * PER_CM2, 3);
  const single = impingementBy.map(([name, value]): NumberRow => ({
    label: `– ${gasWord(name)}`,
    value: rate(value),
    unit: '1/(cm² s)',
  }));
  return [
    { label: 'In the tank', help: 'number density', value: scientific(density * PER_CM3, 3), unit: '1/cm³' },
    { label: 'Striking a surface', help: 'all gases', value: rate(report.impingement), unit: '1/(cm² s)' },
    ...(single.length > 1 ? single : []),
    {
      label: 'A layer grows in',
      help: 'time to one molecule per site if each one stays where it strikes; 10¹⁵ sites per cm²',
      value: durationText(report.monolayerTime),
    },
  ];
}

export function GasNumbers({ gasCase }: { readonly gasCase: GasCase }) {
  const units = useUnits();
  return (
    <>
      <NumbersTable
        caption="Mean free path"
        captionDetail={gasCase.report.vacuumRange}
        labelHeading="of"
        errorHeading="model doubt"
        rows={freePathRows(gasCase, units)}
      >
        <p>
          Doubt: ±6 % of sources for the gas, ±25 % of its cross-section for the vapour. Diameters of the gas:{' '}
          {gasCase.impingementBy
            .map(([name]) => `${gasWord(name)} ${(GASES[name].diameter * 1e10).toFixed(2)} Å`)
            .join(', ')}
          .
        </p>
      </NumbersTable>
      <NumbersTable caption="Knudsen number" labelHeading="over this length" rows={knudsenRows(gasCase, units)}>
        <p>
          Viscous below {VISCOUS_BELOW}, molecular above {MOLECULAR_ABOVE}, intermediate between: names of ISO 3529-1,
          limits from memory of handbooks.
        </p>
      </NumbersTable>
      <NumbersTable caption="Molecules of the gas" labelHeading="where" rows={surfaceRows(gasCase)} />
    </>
  );
}
