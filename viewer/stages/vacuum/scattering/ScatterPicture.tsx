/** The coat through gas beside the coat in vacuum, in the same colours, and what becomes of it at other pressures. */
import { useId, useMemo, useState } from 'react';
import type { Coat } from '../../../../engine/index.ts';
import { coatMap, thicknessValue } from '../../../../workers/picture/coatMap.ts';
import { decimalsOf, extentOf, roundScale, type ValueScale } from '../../../../workers/picture/valueScale.ts';
import { describeMap } from '../../../charts/describeMap.ts';
import { LogChart } from '../../../charts/log/LogChart.tsx';
import { MapPlate } from '../../../charts/MapPlate.tsx';
import { lengthUnit, thicknessUnit } from '../../../charts/shownUnits.ts';
import { useUnits } from '../../../state/units.ts';
import { fileStem, pressureText } from '../vacuumText.ts';
import type { ShotInGas } from './shotInGas.ts';
import { useScatter } from './scatterStore.ts';
import { SWEEP_VIEWS, sweepChart, type SweepView } from './sweepCharts.ts';

const valuesOf = ({ thickness }: Pick<Coat, 'thickness'>): Float64Array => thickness.map(thicknessValue);

interface GasMapProps {
  readonly coat: Coat;
  readonly scale: ValueScale;
  readonly title: string;
  readonly detail: string;
}

function GasMap({ coat, scale, title, detail }: GasMapProps) {
  const id = useId();
  const units = useUnits();
  const subject = useMemo(() => {
    const map = coatMap(
      coat,
      { values: valuesOf(coat), label: `Thickness ${title}`, unit: 'nm' },
      {
        scale,
        valueOf: thicknessValue,
        unit: thicknessUnit(units),
        thicknessUnit: thicknessUnit(units),
        lengthUnit: lengthUnit(units),
      },
    );
    // names would hide a map of half the width; thinnest and thickest place stand in the numbers
    return { ...map, plant: { ...map.plant, witnesses: [] }, keyPlaces: [], barMarks: [] };
  }, [coat, scale, title, units]);
  return (
    <section className="panel face-map vacuum-map" aria-labelledby={id}>
      <div className="chart-head">
        <h2 id={id}>
          Thickness {title} <small>{detail}</small>
        </h2>
      </div>
      <MapPlate subject={subject} description={describeMap(coat, subject, decimalsOf(subject.scale.ticks) + 1)} />
    </section>
  );
}

function Maps({ shot, coat }: { readonly shot: ShotInGas; readonly coat: Coat }) {
  const units = useUnits();
  const { vacuum, straight, inGas, pressure, scattered } = shot;
  const through = useMemo(
    () => ({ ...straight, thickness: inGas.thickness, statistics: inGas.statistics }),
    [straight, inGas],
  );
  const scale = useMemo(() => {
    const [low, high] = extentOf(valuesOf(vacuum));
    const [lowGas, highGas] = extentOf(valuesOf(through));
    return roundScale([Math.min(low, lowGas), Math.max(high, highGas)]);
  }, [vacuum, through]);
  const isOld = vacuum.plant !== coat.plant;
  return (
    <div className="vacuum-maps">
      <GasMap
        coat={through}
        scale={scale}
        title={`at ${pressureText(units, pressure)}`}
        detail={isOld ? 'of an earlier design: follow atoms again' : `seed ${scattered.problem.seed}`}
      />
      <GasMap coat={vacuum} scale={scale} title="in a perfect vacuum" detail="" />
    </div>
  );
}

function Sweep({ coat }: { readonly coat: Coat }) {
  const id = useId();
  const units = useUnits();
  const { sweep, sweepOf } = useScatter();
  const [view, setView] = useState<SweepView>('mean');
  const of = sweepOf ?? coat;
  const data = useMemo(() => sweepChart(view, sweep, of, units), [view, sweep, of, units]);
  if (sweep.length === 0)
    return (
      <section className="panel vacuum-none" aria-label="Sweep of pressures">
        <p>
          A sweep shows mean thickness, uniformity and shares from a perfect vacuum to 1&nbsp;mbar. It takes a while.
        </p>
      </section>
    );
  return (
    <LogChart
      title={`Against pressure${sweepOf?.plant === coat.plant ? '' : ', of an earlier design'}`}
      description={`${SWEEP_VIEWS[view]} of the coat against pressure, at ${sweep.length} pressures.`}
      data={data}
      fileName={`${fileStem(of.plant)}-pressures-${view}`}
    >
      <span className="map-controls">
        <span className="map-choice">
          <label htmlFor={id}>Shown</label>
          <select id={id} value={view} onChange={({ target }) => setView(target.value as SweepView)}>
            {Object.entries(SWEEP_VIEWS).map(([key, name]) => (
              <option key={key} value={key}>
                {name}
              </option>
            ))}
          </select>
        </span>
      </span>
    </LogChart>
  );
}

export function ScatterPicture({ coat }: { readonly coat: Coat }) {
  const shot = useScatter((state) => state.shot);
  return (
    <div className="vacuum-split">
      {shot ? (
        <Maps shot={shot} coat={coat} />
      ) : (
        <section className="panel vacuum-none" aria-label="Coat through gas">
          <p>
            Vapour that meets gas molecules is followed atom by atom to where it sticks. Start with “Follow atoms” on
            the left: the map through gas then stands beside the one in a perfect vacuum.
          </p>
        </section>
      )}
      <Sweep coat={coat} />
    </div>
  );
}
