/** One filament, a ring, two rings: where they stand, and how thick their coat is along the radius. */
import { useCallback, useMemo, useState } from 'react';
import type { Coat } from '../../../../engine/index.ts';
import { LogChart } from '../../../charts/log/LogChart.tsx';
import type { LogChartData } from '../../../charts/log/logChartTypes.ts';
import { lengthUnit } from '../../../charts/shownUnits.ts';
import { useSize } from '../../../charts/useSize.ts';
import { useUnits, type Units } from '../../../state/units.ts';
import { LAYOUTS, LAYOUT_NAMES, ringCoat, type Layout, type Rings } from '../facts/rings.ts';
import type { PictureProps } from '../lesson.ts';
import { sayIn } from '../say.ts';
import { Choices } from './Choices.tsx';
import { Slider } from './Slider.tsx';
import { useLatest } from './useLatest.ts';

const OPTIONS = LAYOUTS.map((layout) => [layout, LAYOUT_NAMES[layout]] as const);
const STEPS = 60;

/** The tank seen along its axis. */
function Plan({ coat, description }: { readonly coat: Coat; readonly description: string }) {
  const [holder, { width, height }] = useSize<HTMLDivElement>();
  const { tank, shape, filaments } = coat.plant;
  const scale = (Math.min(width, height) - 12) / (2 * tank.radius);
  const at = (x: number, y: number) => [width / 2 + scale * (x - tank.centerX), height / 2 - scale * y] as const;
  const [cx, cy] = at(tank.centerX, 0);
  return (
    <div className="chart-plate learn-plan" ref={holder} role="img" aria-label={description}>
      {scale > 0 && (
        <svg width={width} height={height} aria-hidden="true">
          <circle className="learn-tank-wall" cx={cx} cy={cy} r={tank.radius * scale} />
          <circle className="learn-glass" cx={cx} cy={cy} r={shape.rimRadius * scale} />
          <circle className="learn-tank-wall" cx={cx} cy={cy} r={shape.holeRadius * scale} />
          {filaments.map(({ name, center }) => {
            const [x, y] = at(center[0], center[1]);
            return <circle key={name} className="learn-filament" cx={x} cy={y} r={4} />;
          })}
        </svg>
      )}
    </div>
  );
}

function chartOf({ profile, statistics }: Coat, label: string, units: Units): LogChartData {
  const length = lengthUnit(units);
  const mean = statistics.mean.value;
  return {
    xAxis: { label: 'Radius', unit: length.unit, scale: 'linear' },
    yAxis: { label: 'Thickness over its mean', unit: '', scale: 'linear', range: [0, 2] },
    series: [{ label, x: profile.radius.map((r) => r * length.factor), y: profile.mean.map((d) => d / mean) }],
    thresholds: [{ axis: 'y', value: 1, label: 'even' }],
  };
}

export function RingsPicture({ bench, facts, tools, isOpen }: PictureProps<Rings>) {
  const units = useUnits();
  const say = sayIn(units);
  const { room } = facts;
  const [layout, setLayout] = useState<Layout>('one');
  const [diameter, setDiameter] = useState(room.first);
  const compute = useCallback(
    async () => (diameter === room.first ? facts.coats[layout] : ringCoat(bench, tools, layout, diameter)),
    [bench, tools, layout, diameter, facts, room],
  );
  const { value: coat, isWorking, failure } = useLatest(facts.coats.one, isOpen ? compute : null);
  const { uniformity, collection } = coat.statistics;
  const name = LAYOUT_NAMES[layout];
  const summary = `±${say.percent(uniformity.value)} even, ${say.percent(collection.value)} of the aluminium on the mirror`;
  const data = useMemo(() => chartOf(coat, 'mean around the ring', units), [coat, units]);
  return (
    <div className="learn-split" aria-busy={isWorking}>
      <section className="panel learn-picture learn-rings" aria-label="Arrangement">
        <Choices label="Arrangement" choices={OPTIONS} value={layout} onChange={setLayout} isDisabled={!isOpen} />
        <Slider
          label="Width of the ring"
          value={diameter}
          range={[room.least, room.most]}
          step={(room.most - room.least) / STEPS}
          text={say.length(diameter)}
          onChange={setDiameter}
          isDisabled={!isOpen || layout === 'one'}
        />
        <Plan
          coat={coat}
          description={`The tank along its axis: ${name}, ${coat.plant.filaments.length} filaments over the mirror.`}
        />
        <p className="learn-result" role="status">
          {failure ?? (isOpen ? summary : 'Dots are filaments, the filled disc is the mirror.')}
        </p>
      </section>
      {isOpen && (
        <LogChart
          title="The coat along the radius"
          description={`Thickness over its mean against radius for ${name}: ${summary}.`}
          data={data}
          fileName="lesson-rings"
        />
      )}
    </div>
  );
}
