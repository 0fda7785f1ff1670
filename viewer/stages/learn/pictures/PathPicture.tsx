/** Free path against pressure, with the tank for scale. */
import { useMemo, useState } from 'react';
import { inUnit, type Plant } from '../../../../engine/index.ts';
import { LogChart } from '../../../charts/log/LogChart.tsx';
import type { LogChartData } from '../../../charts/log/logChartTypes.ts';
import { lengthUnit } from '../../../charts/shownUnits.ts';
import { NumbersTable } from '../../../panels/NumbersTable.tsx';
import { useUnits, type Units } from '../../../state/units.ts';
import { atomPath, HIGHEST, LOWEST, stateAt, type PathFacts } from '../facts/freePath.ts';
import type { PictureProps } from '../lesson.ts';
import { sayIn } from '../say.ts';
import { Slider } from './Slider.tsx';

const STEP = 0.05;

function chartOf(facts: PathFacts, pressure: number, units: Units): LogChartData {
  const length = lengthUnit(units);
  const shown = (pascal: number): number => inUnit(pascal, 'pressure', units.pressure);
  const x = facts.pressures.map(shown);
  return {
    xAxis: { label: 'Pressure', unit: units.pressure },
    yAxis: { label: 'Free path', unit: length.unit },
    series: [
      { label: 'aluminium atom', x, y: facts.atomPaths.map((path) => path * length.factor) },
      { label: 'gas molecule', x, y: facts.gasPaths.map((path) => path * length.factor) },
    ],
    thresholds: [
      { axis: 'y', value: facts.tankDiameter * length.factor, label: 'width of the tank' },
      { axis: 'x', value: shown(pressure), label: 'here' },
    ],
  };
}

export function PathPicture({ facts, isOpen }: PictureProps<PathFacts & { readonly plant: Plant }>) {
  const units = useUnits();
  const say = sayIn(units);
  const { plant } = facts;
  const [power, setPower] = useState(Math.log10(facts.pressure));
  const pressure = isOpen ? 10 ** power : facts.pressure;
  const data = useMemo(() => chartOf(facts, pressure, units), [facts, pressure, units]);
  const path = atomPath(plant, pressure);
  const { knudsen, regime, range } = stateAt(plant, pressure);
  return (
    <div className="learn-split learn-split-short">
      <section className="panel learn-picture" aria-label="Pressure in the tank">
        <Slider
          label="Pressure"
          value={Math.log10(pressure)}
          range={[Math.log10(LOWEST), Math.log10(HIGHEST)]}
          step={STEP}
          text={say.pressure(pressure)}
          onChange={setPower}
          isDisabled={!isOpen}
        />
        {isOpen && (
          <NumbersTable
            caption="At this pressure"
            labelHeading="in your tank"
            rows={[
              { label: 'Free path of an aluminium atom', value: say.way(path) },
              { label: 'over the width of the tank', value: say.number(path / facts.tankDiameter) },
              { label: 'Knudsen number of the gas', value: say.number(knudsen) },
              { label: 'Flow', detail: range, value: regime },
            ]}
          />
        )}
        {!isOpen && <p className="quiet">The tank is {say.length(facts.tankDiameter)} wide.</p>}
      </section>
      {isOpen && (
        <LogChart
          title="Free path against pressure"
          description={`Free path against pressure: at ${say.pressure(pressure)} an aluminium atom flies ${say.way(path)}.`}
          data={data}
          fileName="lesson-free-path"
        />
      )}
    </div>
  );
}
