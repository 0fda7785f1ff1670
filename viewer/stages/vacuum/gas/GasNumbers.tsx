/** The numbers of the residual gas, each with what the model may be wrong by. */
import { GASES } from '../../../../engine/gas/gases.ts';
import { inUnit } from '../../../../engine/index.ts';
import { scientific } from '../../../format/scientific.ts';
import { NumbersTable, type NumberRow } from '../../../panels/NumbersTable.tsx';
import { useUnits, type Units } from '../../../state/units.ts';
import { durationText, pathText } from '../vacuumText.ts';
import type { Doubted, GasReport } from './gasReport.ts';
import { gasWord } from './residualGas.ts';

/** Relative spread of the sources of the gas's own free path. */
const GAS_PATH_DOUBT = 0.06;

/** "0.11 to 0.19" where the ends say more than one number would. */
const between = (low: string, high: string): string => (low === high ? `≈ ${low}` : `${low} to ${high}`);

function pathRow(label: string, help: string, value: number, doubt: Doubted, units: Units): NumberRow {
  const shown = (metres: number, digits: number): string =>
    Number.isFinite(metres) ? scientific(inUnit(metres, 'length', units.length), digits) : '–';
  return {
    label,
    help,
    value: shown(value, 3),
    error: between(shown(doubt.low, 2), shown(doubt.high, 2)),
    unit: units.length,
  };
}

function freePathRows(report: GasReport, units: Units): NumberRow[] {
  const { gasPath, vapourPath, survival } = report;
  const own = { value: gasPath, low: gasPath / (1 + GAS_PATH_DOUBT), high: gasPath * (1 + GAS_PATH_DOUBT) };
  const share = (value: number): string => scientific(100 * value, value > 0.99 ? 5 : 3);
  const survives: NumberRow = {
    label: 'Vapour that flies straight',
    detail: 'over the mean throw',
    help: 'share that meets no molecule between filaments and mirror',
    value: share(survival.value),
    error: between(share(survival.low), share(survival.high)),
    unit: '%',
  };
  return [
    pathRow('Gas', 'mean free path of the gas’s own molecules, hard spheres', gasPath, own, units),
    pathRow('Aluminium vapour', 'as it leaves the metal at 1500 K', vapourPath.value, vapourPath, units),
    ...(report.throwLength > 0 ? [survives] : []),
  ];
}

function knudsenRows(report: GasReport, units: Units): NumberRow[] {
  const row = (label: string, length: number, knudsen: number, regime: string): NumberRow => ({
    label,
    detail: `${pathText(units, length)}; ${regime}`,
    help: 'mean free path of the gas over this length',
    value: scientific(knudsen, 3),
  });
  return [
    ...(report.throwLength > 0
      ? [row('Filaments to mirror', report.throwLength, report.knudsenThrow, report.regimeThrow)]
      : []),
    row('Across the tank', report.tankDiameter, report.knudsenTank, report.regimeTank),
  ];
}

function surfaceRows(report: GasReport): NumberRow[] {
  const rate = (value: number): string => scientific(value / 1e4, 3);
  const isMixed = report.impingementBy.length > 1;
  return [
    {
      label: 'Molecules in the tank',
      help: 'number density',
      value: scientific(report.density / 1e6, 3),
      unit: '1/cm³',
    },
    { label: 'Striking a surface', help: 'all gases', value: rate(report.impingement), unit: '1/(cm² s)' },
    ...(isMixed
      ? report.impingementBy.map(([name, value]): NumberRow => ({
          label: `– ${gasWord(name)}`,
          value: rate(value),
          unit: '1/(cm² s)',
        }))
      : []),
    {
      label: 'A layer grows in',
      help: 'time to one molecule per site if each one stays where it strikes',
      value: durationText(report.monolayer),
    },
  ];
}

export function GasNumbers({ report }: { readonly report: GasReport }) {
  const units = useUnits();
  const names = report.impingementBy.map(([name]) => name);
  return (
    <>
      <NumbersTable
        caption="Mean free path"
        captionDetail={report.range}
        labelHeading="of"
        errorHeading="model doubt"
        rows={freePathRows(report, units)}
      />
      <NumbersTable caption="Knudsen number" labelHeading="length it is taken over" rows={knudsenRows(report, units)}>
        <p>Viscous below 0.01, molecular above 0.5, intermediate between; names of ISO 3529-1.</p>
      </NumbersTable>
      <NumbersTable caption="On surfaces" labelHeading="molecules of the gas" rows={surfaceRows(report)} />
      <details className="panel vacuum-assumptions">
        <summary>What these numbers assume</summary>
        <ul>
          <li>
            Gas molecules are hard spheres. <code>λ = kT / (√2 π d² p)</code> for one gas; in a mixture all pairs are
            summed.{' '}
            <small>J. H. Jeans, The Dynamical Theory of Gases, chapter X, from memory; sources differ by ±6 %</small>
          </li>
          {names.map((name) => (
            <li key={name}>
              {gasWord(name)}: <code>d = {(GASES[name].diameter * 1e10).toFixed(2)} Å</code>{' '}
              <small>{GASES[name].source}</small>
            </li>
          ))}
          <li>
            Aluminium leaves at 1500 K as a sphere of 3.27 Å, between twice its metallic and twice its van der Waals
            radius: <code>1/λ = ∫ f(v) ν(v)/v dv</code>.{' '}
            <small>No measured cross-section was found; ±25 % spans what is known</small>
          </li>
          <li>
            The throw is the mean over loops and places of the mirror, weighted by what would land there, without
            shadows. <small>Evenfall’s own definition; no outside source</small>
          </li>
          <li>
            <code>Φ = p / √(2π m k T)</code>; one layer is 10¹⁵ molecules per cm², each staying where it strikes.{' '}
            <small>
              J. F. O’Hanlon, A User’s Guide to Vacuum Technology, from memory; the layer: common practice, no source
            </small>
          </li>
          <li>
            Regimes and ranges of vacuum. <small>ISO 3529-1:2019 for the names; limits from memory of handbooks</small>
          </li>
        </ul>
      </details>
    </>
  );
}
