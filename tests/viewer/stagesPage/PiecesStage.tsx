/** All pieces that stages are made of, in the frame that they share. */
import { useState } from 'react';
import { LogChart } from '../../../viewer/charts/log/LogChart.tsx';
import type { LogChartData } from '../../../viewer/charts/log/logChartTypes.ts';
import type { ReadingColumn } from '../../../viewer/format/readings.ts';
import { Cautions } from '../../../viewer/panels/Cautions.tsx';
import { NumbersTable } from '../../../viewer/panels/NumbersTable.tsx';
import { PasteTable } from '../../../viewer/panels/PasteTable.tsx';
import { QuantityField } from '../../../viewer/panels/QuantityField.tsx';
import { VerdictLine } from '../../../viewer/panels/VerdictLine.tsx';
import { StageFrame } from '../../../viewer/stages/StageFrame.tsx';

const x = Array.from({ length: 60 }, (_, i) => 10 ** (-1 + i / 15));
const DATA: LogChartData = {
  xAxis: { label: 'Time', unit: 'min' },
  yAxis: { label: 'Pressure', unit: 'mbar' },
  series: [
    { label: 'total', x, y: x.map((t) => 1e-2 / t + 1e-6) },
    { label: 'water', x, y: x.map((t) => 4e-3 / t) },
    { label: 'air', x, y: x.map((t) => 1e-2 * Math.exp(-t)) },
  ],
  points: [{ label: 'gauge', x: [1, 5, 20, 90], y: [1.1e-2, 2e-3, 6e-4, 1e-4] }],
  thresholds: [
    { axis: 'y', value: 1e-5, label: 'wanted' },
    { axis: 'x', value: 30, label: 'half an hour' },
  ],
};
const COLUMNS: readonly ReadingColumn[] = [
  { name: 'witness', holds: 'text', isNeeded: true },
  { name: 'thickness', holds: 'length', isNeeded: true },
];

export function PiecesStage() {
  const [pressure, setPressure] = useState(1e-3);
  const [text, setText] = useState('');
  return (
    <StageFrame
      sentence={<VerdictLine level="good" sentence="All pieces hold together." second="This is a test." />}
      picture={<LogChart title="Pump-down" description="Pressure against time." data={DATA} fileName="pump-down" />}
      numbers={
        <>
          <NumbersTable
            caption="Numbers"
            labelHeading="of the test"
            rows={[
              { label: 'Pressure', value: '1.20', error: '± 0.03', unit: 'mbar', help: 'at the end' },
              { label: 'Count', value: '7' },
            ]}
          />
          <section className="panel" aria-label="Fields">
            <QuantityField
              label="Base pressure"
              dimension="pressure"
              unit="mbar"
              value={pressure}
              range={[1e-8, 1e5]}
              onChange={setPressure}
            />
          </section>
          <section className="panel" aria-label="Readings">
            <PasteTable
              label="Thickness at the witnesses"
              columns={COLUMNS}
              example={'witness,thickness\n,nm\nrim 0,118\nhub,72'}
              text={text}
              onText={setText}
            />
          </section>
          <Cautions
            title="Cautions for the test"
            cautions={['A window under vacuum can implode: keep its guard on.']}
          />
        </>
      }
      numbersLabel="Numbers of the test"
    />
  );
}
