/** A plate in the way, and the coat along the line behind it. */
import { useCallback, useMemo, useState } from 'react';
import { LogChart } from '../../../charts/log/LogChart.tsx';
import type { LogChartData } from '../../../charts/log/logChartTypes.ts';
import { lengthUnit, thicknessUnit } from '../../../charts/shownUnits.ts';
import { useUnits, type Units } from '../../../state/units.ts';
import { deepest, HALF, shadowLine, type ShadowFacts, type ShadowLine } from '../facts/shadow.ts';
import type { PictureProps } from '../lesson.ts';
import { sayIn } from '../say.ts';
import { Choices } from './Choices.tsx';
import { overHole } from './lineData.ts';
import { SectionFrame } from './SectionFrame.tsx';
import { Slider } from './Slider.tsx';
import { useLatest } from './useLatest.ts';

type Feeding = 'all' | 'one';

function chartOf(line: ShadowLine, feeding: Feeding, units: Units): LogChartData {
  const length = lengthUnit(units);
  const thickness = thicknessUnit(units);
  const [clear, shaded] = feeding === 'all' ? [line.clear, line.shaded] : [line.oneClear, line.oneShaded];
  const series = (label: string, values: Float64Array) => {
    const { x, y } = overHole(line.along, values);
    return { label, x: x.map((s) => s * length.factor), y: y.map((d) => d * 1e9 * thickness.factor) };
  };
  return {
    xAxis: { label: 'Along the mirror', unit: length.unit, scale: 'linear' },
    yAxis: {
      label: 'Thickness',
      unit: thickness.unit,
      scale: 'linear',
      range: [0, 1.1e9 * thickness.factor * Math.max(...clear)],
    },
    series: [series('with the plate', shaded), series('without', clear)],
  };
}

export function ShadowPicture({ bench, facts, isOpen }: PictureProps<ShadowFacts>) {
  const units = useUnits();
  const say = sayIn(units);
  const first = facts.half.plate;
  const [share, setShare] = useState(HALF);
  const [diameter, setDiameter] = useState(first.diameter);
  const [feeding, setFeeding] = useState<Feeding>('all');
  const compute = useCallback(async () => shadowLine(bench, { share, diameter }), [bench, share, diameter]);
  const { value: line, failure } = useLatest(facts.half, isOpen ? compute : null);
  const missing = feeding === 'all' ? deepest(line.clear, line.shaded) : deepest(line.oneClear, line.oneShaded);
  const summary = `${say.percent(missing)} missing at the darkest place`;
  const data = useMemo(() => chartOf(line, feeding, units), [line, feeding, units]);
  const { center, plate } = line;
  return (
    <div className="learn-split">
      <section className="panel learn-picture" aria-label="Plate, filament and mirror, cut through">
        <SectionFrame
          plant={bench.plant}
          along={line.along}
          height={line.height}
          description={`A cut through the tank: a plate ${say.length(plate.diameter)} wide hangs ${say.percent(plate.share)} of the way from the mirror to ${facts.filamentName}.`}
        >
          {(at) => {
            const [fx, fy] = at(...facts.filament);
            const [lx, ly] = at(center[0] - plate.diameter / 2, center[1]);
            const [rx, ry] = at(center[0] + plate.diameter / 2, center[1]);
            return (
              <>
                <path className="learn-ray learn-ray-best" d={`M${fx} ${fy}L${lx} ${ly}M${fx} ${fy}L${rx} ${ry}`} />
                <path className="learn-plate" d={`M${lx} ${ly}L${rx} ${ry}`} />
                <circle className="learn-filament" cx={fx} cy={fy} r={6} />
                <text x={fx - 10} y={fy - 10} textAnchor="end">
                  {facts.filamentName}
                </text>
              </>
            );
          }}
        </SectionFrame>
        <Slider
          label="Plate above the mirror"
          value={share}
          range={[0.05, 0.95]}
          step={0.05}
          text={`${say.percent(share)} of the way up`}
          onChange={setShare}
          isDisabled={!isOpen}
        />
        <Slider
          label="Width of the plate"
          value={diameter}
          range={[0.25 * first.diameter, 3 * first.diameter]}
          step={first.diameter / 20}
          text={say.length(diameter)}
          onChange={setDiameter}
          isDisabled={!isOpen}
        />
      </section>
      {isOpen && (
        <LogChart
          title="The coat behind it"
          description={`Thickness along the mirror with and without the plate: ${summary}.`}
          data={data}
          fileName="lesson-shadow"
        >
          {facts.firingCount > 1 && (
            <Choices
              label="Firing"
              choices={[
                ['all', 'all filaments'],
                ['one', `only ${facts.filamentName}`],
              ]}
              value={feeding}
              onChange={setFeeding}
            />
          )}
          <p className="learn-result" role="status">
            {failure ?? summary}
          </p>
        </LogChart>
      )}
    </div>
  );
}
