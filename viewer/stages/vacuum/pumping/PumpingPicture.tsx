/** How the tank is pumped down: pressure against time with what was measured, and who brings the gas. */
import { useMemo, useState } from 'react';
import type { Plant } from '../../../../engine/index.ts';
import type { PressureReading } from '../../../../engine/vacuum/readings.ts';
import { LogChart } from '../../../charts/log/LogChart.tsx';
import { useUnits } from '../../../state/units.ts';
import { fileStem } from '../vacuumText.ts';
import type { PumpingCase } from './pumpingCase.ts';
import { flowsChart, loadsChart, pressureChart } from './pumpingChart.ts';

interface PumpingPictureProps {
  readonly plant: Plant;
  readonly pumping: PumpingCase;
  readonly measured: readonly PressureReading[];
}

type Loads = 'shares' | 'flows';

export function PumpingPicture({ plant, pumping, measured }: PumpingPictureProps) {
  const units = useUnits();
  const [loads, setLoads] = useState<Loads>('shares');
  const pressure = useMemo(() => pressureChart(pumping, measured, units), [pumping, measured, units]);
  const gas = useMemo(
    () => (loads === 'shares' ? loadsChart(pumping) : flowsChart(pumping, units)),
    [pumping, loads, units],
  );
  const first = pumping.verdict.limit.loads[0];
  return (
    <div className="vacuum-split">
      <LogChart
        title="Pump-down"
        description={`Pressure against time. ${pumping.verdict.sentence}${measured.length > 0 ? ` ${measured.length} readings lie over it.` : ''}`}
        data={pressure}
        fileName={`${fileStem(plant)}-pump-down`}
      />
      <LogChart
        title="Who brings the gas"
        description={`Gas loads against time${first ? `; at the end ${first.name} brings most` : ''}.`}
        data={gas}
        fileName={`${fileStem(plant)}-gas-loads`}
      >
        <span className="map-controls">
          <span className="map-choice">
            <label htmlFor="vacuum-loads">Shown as</label>
            <select id="vacuum-loads" value={loads} onChange={({ target }) => setLoads(target.value as Loads)}>
              <option value="shares">shares</option>
              <option value="flows">gas flows</option>
            </select>
          </span>
        </span>
      </LogChart>
    </div>
  );
}
