/** The rise of pressure in the closed tank, with the fit through the readings. */
import { useMemo } from 'react';
import { inUnit, type Plant } from '../../../../engine/index.ts';
import { LogChart } from '../../../charts/log/LogChart.tsx';
import type { LogChartData } from '../../../charts/log/logChartTypes.ts';
import { useUnits, type Units } from '../../../state/units.ts';
import { fileStem } from '../vacuumText.ts';
import type { RiseCase } from './riseCase.ts';

interface RisePictureProps {
  readonly plant: Plant;
  readonly rise: RiseCase | null;
}

const MINUTE = 60;

function riseChart({ readings, volume, fit }: RiseCase, units: Units): LogChartData {
  const start = readings[0]?.time ?? 0;
  const shown = (pascals: number): number => inUnit(pascals, 'pressure', units.pressure);
  const x = readings.map(({ time }) => (time - start) / MINUTE);
  const leakSlope = fit ? fit.leak.best / volume : 0;
  return {
    xAxis: { label: 'Time from the first reading', unit: 'min', scale: 'linear' },
    yAxis: { label: 'Pressure', unit: units.pressure, scale: 'linear' },
    series: fit
      ? [
          { label: 'fit', x, y: Array.from(fit.fitted, shown) },
          { label: 'leak alone', x, y: x.map((minutes) => shown(fit.start + leakSlope * minutes * MINUTE)) },
        ]
      : [],
    points: [{ label: 'measured', x, y: readings.map(({ pressure }) => shown(pressure)) }],
  };
}

export function RisePicture({ plant, rise }: RisePictureProps) {
  const units = useUnits();
  const data = useMemo(() => rise && riseChart(rise, units), [rise, units]);
  if (!rise || !data)
    return (
      <section className="panel vacuum-none" aria-label="Rate of rise">
        <p>
          Close all valves, read the gauge every minute for half an hour, and paste the readings on the right: a leak
          rises in a straight line, outgassing bends over.
        </p>
      </section>
    );
  const outcome = rise.fit?.sentence ?? rise.reasons.join(' ');
  return (
    <LogChart
      title="Rate of rise"
      description={`Pressure in the closed tank against time. ${outcome}`}
      data={data}
      fileName={`${fileStem(plant)}-rate-of-rise`}
    />
  );
}
