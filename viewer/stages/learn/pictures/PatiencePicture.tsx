/** The pump-down, with a moment to fire that the learner moves. */
import { useMemo, useState } from 'react';
import { inUnit } from '../../../../engine/index.ts';
import { LogChart } from '../../../charts/log/LogChart.tsx';
import type { LogChartData } from '../../../charts/log/logChartTypes.ts';
import { useUnits, type Units } from '../../../state/units.ts';
import { indexFrom, type PatienceFacts } from '../facts/patience.ts';
import type { PictureProps } from '../lesson.ts';
import { sayIn } from '../say.ts';
import { Choices } from './Choices.tsx';
import { Slider } from './Slider.tsx';

/** First time drawn and chosen, s. */
const FIRST = 60;
const STEP = 0.01;
const MINUTE = 60;

const SHOWN = [
  ['pressure', 'pressure'],
  ['film', 'what stays in the film'],
] as const;
type Shown = (typeof SHOWN)[number][0];

/** Samples from FIRST on whose times rise strictly. */
function kept({ curve }: PatienceFacts): number[] {
  const indices: number[] = [];
  for (let i = 0; i < curve.count; i++)
    if (curve.time[i]! >= FIRST && curve.time[i]! > (curve.time[indices.at(-1) ?? -1] ?? 0)) indices.push(i);
  return indices;
}

function pressureChart(facts: PatienceFacts, time: number, units: Units): LogChartData {
  const indices = kept(facts);
  const shown = (pascal: number): number => inUnit(pascal, 'pressure', units.pressure);
  return {
    xAxis: { label: 'Time of pumping', unit: 'min' },
    yAxis: { label: 'Pressure', unit: units.pressure },
    series: [
      {
        label: 'pressure',
        x: indices.map((i) => facts.curve.time[i]! / MINUTE),
        y: indices.map((i) => shown(facts.curve.pressure[i]!)),
      },
    ],
    thresholds: [
      { axis: 'y', value: shown(facts.firingPressure), label: 'firing pressure' },
      { axis: 'x', value: time / MINUTE, label: 'fire' },
    ],
  };
}

function ratioChart(facts: PatienceFacts, time: number): LogChartData {
  const indices = kept(facts);
  return {
    xAxis: { label: 'Time of pumping', unit: 'min' },
    yAxis: { label: 'Molecules for each atom', unit: '' },
    series: [
      {
        label: 'stay in the film',
        x: indices.map((i) => facts.curve.time[i]! / MINUTE),
        y: indices.map((i) => facts.ratio[i]!),
      },
    ],
    thresholds: [{ axis: 'x', value: time / MINUTE, label: 'fire' }],
  };
}

export function PatiencePicture({ facts, isOpen }: PictureProps<PatienceFacts>) {
  const units = useUnits();
  const say = sayIn(units);
  const { curve } = facts;
  const last = curve.time[curve.count - 1]!;
  const [power, setPower] = useState(Math.log10(Math.max(FIRST, facts.early)));
  const [shown, setShown] = useState<Shown>('pressure');
  const time = 10 ** power;
  const at = indexFrom(curve, time);
  const [pressure, ratio] = [curve.pressure[at]!, facts.ratio[at]!];
  const pressures = useMemo(() => pressureChart(facts, time, units), [facts, time, units]);
  const ratios = useMemo(() => ratioChart(facts, time), [facts, time]);
  const summary = `Fired after ${say.time(time)}: ${say.pressure(pressure)}, ${say.number(ratio, 2)} foreign molecules stay for each aluminium atom.`;
  return (
    <div className="learn-split learn-split-short">
      <section className="panel learn-picture" aria-label="Moment of firing">
        <Slider
          label="Fire after"
          value={power}
          range={[Math.log10(FIRST), Math.log10(last)]}
          step={STEP}
          text={say.time(time)}
          onChange={setPower}
          isDisabled={!isOpen}
        />
        <p className="learn-result" role="status">
          {isOpen ? summary : 'The tank is closed and the pumps are running.'}
        </p>
      </section>
      {isOpen && (
        <LogChart
          title={shown === 'pressure' ? 'Pump-down' : 'Foreign molecules that stay'}
          description={`${shown === 'pressure' ? 'Pressure' : 'Foreign molecules for each aluminium atom'} against the time of pumping. ${summary}`}
          data={shown === 'pressure' ? pressures : ratios}
          fileName={shown === 'pressure' ? 'lesson-pump-down' : 'lesson-foreign-molecules'}
        >
          <Choices label="Show" choices={SHOWN} value={shown} onChange={setShown} />
        </LogChart>
      )}
    </div>
  );
}
