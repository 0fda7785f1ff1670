/** One filament's vapour at any pressure: tracks, and where they land. */
import { useCallback, useMemo, useState } from 'react';
import type { Plant } from '../../../../engine/index.ts';
import { useSize } from '../../../charts/useSize.ts';
import { useUnits } from '../../../state/units.ts';
import { fly, spotSize, type Flight } from '../facts/flights.ts';
import { DRAWN, FAR_ABOVE, GOOD_VACUUM, type RaisedFacts } from '../facts/raised.ts';
import type { PictureProps } from '../lesson.ts';
import { sayIn } from '../say.ts';
import { Slider } from './Slider.tsx';
import { TracksScene } from './TracksScene.tsx';
import { trackLines } from './trackLines.ts';
import { useLatest } from './useLatest.ts';

/** Steps of the slider over its decades. */
const STEP = 0.1;
const breathe = async (): Promise<void> => new Promise((resolve) => setTimeout(resolve, 0));

/** The mirror seen face on, with a disc for each straight landing and a cross for each scattered one. */
function Landings({
  plant,
  flights,
  description,
}: {
  readonly plant: Plant;
  readonly flights: readonly Flight[];
  readonly description: string;
}) {
  const [holder, { width, height }] = useSize<HTMLDivElement>();
  const { shape } = plant;
  const scale = (Math.min(width, height) - 12) / (2 * shape.rimRadius);
  const at = (x: number, y: number) => [width / 2 + scale * (x - shape.centerX), height / 2 - scale * y] as const;
  return (
    <div className="chart-plate learn-plan" ref={holder} role="img" aria-label={description}>
      {scale > 0 && (
        <svg width={width} height={height} aria-hidden="true">
          <circle className="learn-glass" cx={width / 2} cy={height / 2} r={scale * shape.rimRadius} />
          <circle className="learn-hole" cx={width / 2} cy={height / 2} r={scale * shape.holeRadius} />
          {flights.map(({ points, landing, collisions }, i) => {
            if (landing !== 'mirror') return null;
            const [x, y] = at(points.at(-3)!, points.at(-2)!);
            return collisions === 0 ? (
              <circle key={i} className="learn-landing" cx={x} cy={y} r={3} />
            ) : (
              <path key={i} className="learn-landing-bent" d={`M${x - 4} ${y - 4}l8 8m0 -8l-8 8`} />
            );
          })}
        </svg>
      )}
    </div>
  );
}

export function PressurePicture({ bench, facts, isOpen }: PictureProps<RaisedFacts>) {
  const say = sayIn(useUnits());
  const { plant } = bench;
  const { nozzle, clear } = facts;
  const range = [Math.log10(GOOD_VACUUM), Math.log10(2 * FAR_ABOVE * facts.halving)] as const;
  const [power, setPower] = useState(range[0]);
  const pressure = 10 ** power;
  const compute = useCallback(
    async () => fly(plant, { pressure, count: DRAWN, source: nozzle }, { step: breathe }),
    [plant, pressure, nozzle],
  );
  const { value: flights, isWorking, failure } = useLatest(clear, isOpen ? compute : null);
  const lines = useMemo(() => trackLines(isOpen ? flights : [], isOpen ? flights.length : 0), [flights, isOpen]);
  const met = flights.filter(({ collisions }) => collisions > 0).length;
  const landed = flights.filter(({ landing }) => landing === 'mirror');
  const size = spotSize(flights);
  const summary = `${met} of ${flights.length} atoms met a molecule; ${landed.length} reached the mirror${Number.isFinite(size) ? `, ${say.length(size)} (rms) from the middle of their spot` : ''}.`;
  return (
    <section className="panel learn-picture learn-pressure" aria-label="Tracks at a pressure" aria-busy={isWorking}>
      <Slider
        label="Pressure"
        value={power}
        range={range}
        step={STEP}
        text={say.pressure(pressure)}
        onChange={setPower}
        isDisabled={!isOpen}
      />
      <div className="learn-pair">
        <TracksScene
          plant={plant}
          lines={lines}
          description={`Tracks of ${flights.length} atoms from the nozzle on ${facts.filamentName} at ${say.pressure(pressure)}. ${isOpen ? summary : ''}`}
        />
        {isOpen && (
          <Landings plant={plant} flights={flights} description={`Where they landed on the mirror. ${summary}`} />
        )}
      </div>
      <p className="learn-result" role="status">
        {failure ?? (isOpen ? summary : `The nozzle on ${facts.filamentName} is still closed.`)}
      </p>
      {isOpen && <p className="quiet">Right: the mirror face on, ● landed straight, × landed after collisions.</p>}
    </section>
  );
}
