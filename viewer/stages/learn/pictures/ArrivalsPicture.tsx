/** What arrives at a place of the growing film: aluminium and gas, in their proportion. */
import { useState } from 'react';
import type { Plant } from '../../../../engine/index.ts';
import { NumbersTable } from '../../../panels/NumbersTable.tsx';
import { useUnits } from '../../../state/units.ts';
import { arrivalsAt, COMPARED, LONGEST, SHORTEST, type DirtyFacts } from '../facts/dirtyGas.ts';
import type { PictureProps } from '../lesson.ts';
import { sayIn } from '../say.ts';
import { Slider } from './Slider.tsx';

const COLUMNS = 30;
const ROWS = 8;
const CELLS = COLUMNS * ROWS;
const SIZE = 20;

/** Which of the arrivals are gas: as many as their share, spread evenly by the golden ratio. */
function gasCells(striking: number): ReadonlySet<number> {
  const count = Math.round((CELLS * striking) / (1 + striking));
  const order = Array.from({ length: CELLS }, (_, i) => i).sort(
    (a, b) => ((a * 0.6180339887498949) % 1) - ((b * 0.6180339887498949) % 1),
  );
  return new Set(order.slice(0, count));
}

function Arrivals({ striking, description }: { readonly striking: number; readonly description: string }) {
  const gas = gasCells(striking);
  return (
    <svg
      className="learn-arrivals"
      viewBox={`0 0 ${COLUMNS * SIZE} ${ROWS * SIZE}`}
      role="img"
      aria-label={description}
    >
      {Array.from({ length: CELLS }, (_, i) => {
        const [x, y] = [((i % COLUMNS) + 0.5) * SIZE, (Math.floor(i / COLUMNS) + 0.5) * SIZE];
        return gas.has(i) ? (
          <path key={i} className="learn-landing-bent" d={`M${x - 5} ${y - 5}l10 10m0 -10l-10 10`} />
        ) : (
          <circle key={i} className="learn-landing" cx={x} cy={y} r={6} />
        );
      })}
    </svg>
  );
}

export function ArrivalsPicture({ facts, isOpen }: PictureProps<DirtyFacts & { readonly plant: Plant }>) {
  const say = sayIn(useUnits());
  const [power, setPower] = useState(Math.log10(COMPARED[1]));
  const [durationPower, setDurationPower] = useState(Math.log10(facts.duration));
  const pressure = 10 ** power;
  const duration = 10 ** durationPower;
  const { striking, staying, band, atoms } = arrivalsAt(facts.plant, facts, pressure, duration);
  const inTotal = CELLS / (1 + striking);
  const summary = `Of ${CELLS} arrivals about ${say.number(Math.round(inTotal))} are aluminium and ${say.number(CELLS - Math.round(inTotal))} gas.`;
  return (
    <section className="panel learn-picture" aria-label="What arrives at the film">
      <Slider
        label="Pressure"
        value={power}
        range={[Math.log10(COMPARED[2]), Math.log10(COMPARED[0])]}
        step={0.1}
        text={say.pressure(pressure)}
        onChange={setPower}
        isDisabled={!isOpen}
      />
      <Slider
        label="Time of the shot"
        value={durationPower}
        range={[Math.log10(SHORTEST), Math.log10(LONGEST)]}
        step={0.01}
        text={say.time(duration)}
        onChange={setDurationPower}
        isDisabled={!isOpen}
      />
      {isOpen && (
        <>
          <Arrivals striking={striking} description={summary} />
          <p className="learn-result" role="status">
            {summary}
          </p>
          <p className="quiet">● aluminium · × gas that strikes the film; only a part of it stays.</p>
          <NumbersTable
            caption="At one place of the film"
            labelHeading={`mean thickness, ${say.thickness(facts.thickness)}`}
            rows={[
              { label: 'Aluminium atoms', value: say.number(atoms), unit: '/(m²·s)' },
              { label: 'Molecules that strike, for each atom', value: say.number(striking) },
              { label: 'Molecules that stay, for each atom', value: say.number(staying) },
              { label: 'Film', value: band.name },
            ]}
          >
            {band.meaning}
          </NumbersTable>
        </>
      )}
    </section>
  );
}
