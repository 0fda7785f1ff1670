/** The coat across the blown-up mirror, as one would see it in a ditch: kilometres along, millimetres up. */
import { useMemo, useState } from 'react';
import type { Coat } from '../../../../engine/index.ts';
import { LogChart } from '../../../charts/log/LogChart.tsx';
import type { LogChartData } from '../../../charts/log/logChartTypes.ts';
import { NumbersTable } from '../../../panels/NumbersTable.tsx';
import { useUnits } from '../../../state/units.ts';
import { FIRST_REGION, LEAST_REGION, magnification, MOST_REGION, type ScaleFacts } from '../facts/scale.ts';
import type { PictureProps } from '../lesson.ts';
import { sayIn } from '../say.ts';
import { Slider } from './Slider.tsx';

/** Thinnest and thickest around a circle are worth lines of their own if they differ by this share somewhere. */
const UNEVEN = 0.03;

const isEvenAround = ({ profile: { minimum, maximum } }: Coat): boolean =>
  minimum.every((low, i) => maximum[i]! - low <= UNEVEN * maximum[i]!);

function chartOf({ coat }: ScaleFacts, by: number): LogChartData {
  const { radius, mean, minimum, maximum } = coat.profile;
  const x = radius.map((r) => (r * by) / 1e3);
  const y = (values: Float64Array): Float64Array => values.map((d) => d * by * 1e3);
  return {
    xAxis: { label: 'From the middle', unit: 'km', scale: 'linear' },
    yAxis: {
      label: 'Height of the coat',
      unit: 'mm',
      scale: 'linear',
      range: [0, 1.15e3 * by * Math.max(...maximum)],
    },
    series: [
      { label: 'mean around the circle', x, y: y(mean) },
      ...(isEvenAround(coat)
        ? []
        : [
            { label: 'thinnest', x, y: y(minimum) },
            { label: 'thickest', x, y: y(maximum) },
          ]),
    ],
  };
}

export function ScalePicture({ facts, isOpen }: PictureProps<ScaleFacts>) {
  const say = sayIn(useUnits());
  const [power, setPower] = useState(Math.log10(FIRST_REGION));
  const region = 10 ** power;
  const by = magnification(facts, region);
  const data = useMemo(() => chartOf(facts, by), [facts, by]);
  const { mean } = facts.coat.statistics;
  const row = (label: string, real: string, value: number) => ({
    label,
    detail: real,
    value: say.number(value * by * 1e3, 2),
    unit: 'mm',
  });
  return (
    <div className="learn-split learn-split-short">
      <section className="panel learn-picture" aria-label="How large the region is">
        <Slider
          label="Across the region"
          value={power}
          range={[Math.log10(LEAST_REGION), Math.log10(MOST_REGION)]}
          step={0.05}
          text={say.kilometres(region)}
          onChange={setPower}
          isDisabled={!isOpen}
        />
        <p className="learn-result" role="status">
          The mirror, {say.length(facts.diameter)} across, blown up {say.number(by)} times.
        </p>
        {isOpen && (
          <NumbersTable
            caption="Then it measures"
            labelHeading="in truth"
            rows={[
              row('Coat', say.thickness(mean.value), mean.value),
              row('Surface error, rms', say.thickness(facts.surfaceRms), facts.surfaceRms),
              row('Surface error, valley to peak', say.thickness(facts.surfacePeakToValley), facts.surfacePeakToValley),
              row('One aluminium atom', say.thickness(facts.atom), facts.atom),
            ]}
          />
        )}
      </section>
      {isOpen && (
        <LogChart
          title="The coat across the region"
          description={`The coat from the middle of a region ${say.kilometres(region)} across to its edge: ${say.millimetres(mean.value * by)} on average.`}
          data={data}
          fileName="lesson-scale"
        />
      )}
    </div>
  );
}
