/** When what happens, who brings the gas, what limits the pressure, and what would help. */
import { useEffect, useState } from 'react';
import type { Help } from '../../../../engine/vacuum/limits.ts';
import type { PumpDownEventKind } from '../../../../engine/vacuum/pumpDownCurve.ts';
import { scientific } from '../../../format/scientific.ts';
import { NumbersTable, type NumberRow } from '../../../panels/NumbersTable.tsx';
import { shownQuantity, useUnits, type Units } from '../../../state/units.ts';
import { durationText, flowUnit, pressureText, shownFlow } from '../vacuumText.ts';
import { helpsOf, type PumpingCase } from './pumpingCase.ts';

const EVENTS: Readonly<Record<PumpDownEventKind, (name: string) => string>> = {
  'pump opens': (name) => `${name} opens`,
  'pump closes': (name) => `${name} closes`,
  crossover: () => 'Crossover',
  'glow starts': () => 'Glow discharge starts',
  'glow ends': () => 'Glow discharge ends',
  'trap cold': () => 'Cold trap is cold',
  'firing pressure': () => 'Firing pressure',
};

function eventRows({ curve }: PumpingCase, units: Units): NumberRow[] {
  const rows = curve.events.map(({ kind, name, time, pressure }): NumberRow => ({
    label: EVENTS[kind](name),
    detail: `at ${pressureText(units, pressure)}`,
    value: durationText(time),
  }));
  const never: NumberRow = {
    label: 'Firing pressure',
    detail: pressureText(units, curve.until),
    value: 'never',
  };
  return curve.reachedAt === null ? [...rows, never] : rows;
}

function loadRows({ verdict }: PumpingCase, units: Units): NumberRow[] {
  return verdict.limit.loads
    .filter(({ flow }) => flow > 0)
    .map(({ name, flow, share }) => ({
      label: name,
      detail: `${scientific(100 * share, 2)} %`,
      value: scientific(shownFlow(units, flow), 2),
      unit: flowUnit(units),
    }));
}

function pumpRows({ verdict }: PumpingCase): NumberRow[] {
  return verdict.limit.pumps.map(({ name, rated, effective }) => ({
    label: name,
    detail: `of ${scientific(1e3 * rated, 3)} l/s at its inlet`,
    help: 'speed for air that reaches the tank through its line',
    value: scientific(1e3 * effective, 3),
    unit: 'l/s',
  }));
}

/** What helps takes several pump-downs: it follows when no edit has come for so long, ms. */
const CALM = 300;

function Helps({ pumping }: { readonly pumping: PumpingCase }) {
  const [helps, setHelps] = useState<readonly Help[] | null>(null);
  useEffect(() => {
    const timer = setTimeout(() => setHelps(helpsOf(pumping)), CALM);
    return () => clearTimeout(timer);
  }, [pumping]);
  if (!helps) return null;
  const rows = helps.map(({ change, time, verdict }): NumberRow => ({
    label: change,
    ...(verdict === 'reaches' && { detail: 'reaches it' }),
    value: time === null ? 'never' : durationText(time),
  }));
  return rows.length > 0 ? (
    <NumbersTable caption="What would help" labelHeading="change" rows={rows} />
  ) : (
    <section className="panel" aria-label="What would help">
      <p className="quiet">No single change of leak, surfaces, venting or pumps saves more than 3 % of the time.</p>
    </section>
  );
}

export function PumpingNumbers({ pumping }: { readonly pumping: PumpingCase }) {
  const units = useUnits();
  const { system, verdict } = pumping;
  const at = verdict.isReached ? 'at the firing pressure' : 'at the end';
  return (
    <>
      <NumbersTable caption="When" labelHeading="after pumping begins" rows={eventRows(pumping, units)}>
        <p>Numerical error below 0.01 % of each time; the rates of surfaces are known to a factor of 3 to 10.</p>
      </NumbersTable>
      <NumbersTable
        caption="Who brings the gas"
        captionDetail={at}
        labelHeading="load"
        rows={loadRows(pumping, units)}
      />
      <NumbersTable caption="Pumps" captionDetail={at} labelHeading="open to the tank" rows={pumpRows(pumping)}>
        <p>
          Free volume {scientific(system.volume, 3)} m³, {shownQuantity(units, 'temperature', system.temperature, 3)}.
        </p>
      </NumbersTable>
      <Helps pumping={pumping} />
    </>
  );
}
