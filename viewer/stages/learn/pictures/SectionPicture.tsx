/** One filament, one place: the way between them, and the three factors that share the vapour out. */
import { useState } from 'react';
import { useUnits } from '../../../state/units.ts';
import { fallTo, type ThinEdge } from '../facts/thinEdge.ts';
import type { PictureProps } from '../lesson.ts';
import { sayIn } from '../say.ts';
import { SectionFrame } from './SectionFrame.tsx';
import { Slider } from './Slider.tsx';

interface Bar {
  readonly label: string;
  /** of the best place's, 1 */
  readonly share: number;
  readonly text: string;
}

function Bars({ bars }: { readonly bars: readonly Bar[] }) {
  return (
    <table className="learn-bars numbers">
      <caption>
        Beside the best place <small>1 is as much as there</small>
      </caption>
      <tbody>
        {bars.map(({ label, share, text }) => (
          <tr key={label}>
            <th scope="row">{label}</th>
            <td className="learn-bar-cell" aria-hidden="true">
              <svg viewBox="0 0 100 10" preserveAspectRatio="none">
                <rect className="learn-bar" width={100 * Math.min(1, share)} height={10} />
              </svg>
            </td>
            <td className="value">{text}</td>
          </tr>
        ))}
      </tbody>
    </table>
  );
}

export function SectionPicture({ bench, facts, isOpen }: PictureProps<ThinEdge>) {
  const say = sayIn(useUnits());
  const [chosen, setChosen] = useState(facts.far);
  const place = isOpen ? Math.min(chosen, facts.along.length - 1) : facts.far;
  const { along, height, filament, distance, arrival, thickness, filamentName } = facts;
  const fall = fallTo(facts, place);
  const angle = (Math.acos(arrival[place]!) * 180) / Math.PI;
  const where = `${say.length(along[place]!)} from the middle, ${say.length(distance[place]!)} from the filament`;
  const bars: Bar[] = [
    { label: 'distance, squared', share: 1 / fall.distance },
    { label: 'angle of arrival', share: 1 / fall.arrival },
    { label: 'angle of emission', share: 1 / fall.emission },
    { label: 'all three', share: 1 / (fall.distance * fall.arrival * fall.emission) },
    { label: 'the engine’s coat', share: 1 / fall.total },
  ].map((bar) => ({ ...bar, text: say.number(bar.share, 2) }));
  return (
    <section className="panel learn-picture" aria-label="Filament and mirror, cut through">
      <SectionFrame
        plant={bench.plant}
        along={along}
        height={height}
        description={`A cut through the tank: ${filamentName} and a place on the mirror ${where}.${isOpen ? ` The vapour arrives ${say.number(angle, 2)} degrees from the normal.` : ''}`}
      >
        {(at) => {
          const [fx, fy] = at(...filament);
          const [px, py] = at(along[place]!, height[place]!);
          const [nx, ny] = at(along[facts.near]!, height[facts.near]!);
          return (
            <>
              <path className="learn-ray learn-ray-best" d={`M${fx} ${fy}L${nx} ${ny}`} />
              <path className="learn-ray" d={`M${fx} ${fy}L${px} ${py}`} />
              <circle className="learn-filament" cx={fx} cy={fy} r={6} />
              <text x={fx + (fx > px ? -10 : 10)} y={fy - 10} textAnchor={fx > px ? 'end' : 'start'}>
                {filamentName}
              </text>
              <rect className="learn-place" x={px - 5} y={py - 5} width={10} height={10} />
              <text x={px + (px < fx ? 12 : -12)} y={py + 24} textAnchor={px < fx ? 'start' : 'end'}>
                {isOpen ? `${say.thickness(thickness[place]!)} from this filament` : 'the far end'}
              </text>
              <path className="learn-best" d={`M${nx - 6} ${ny + 5}h12l-6 -11z`} />
            </>
          );
        }}
      </SectionFrame>
      <Slider
        label="Place on the mirror"
        value={place}
        range={[0, along.length - 1]}
        step={1}
        text={`${say.length(along[place]!)} from the middle`}
        onChange={setChosen}
        isDisabled={!isOpen}
      />
      {isOpen && <Bars bars={bars} />}
      <p className="quiet">
        ▲ the place that this filament coats most · □ the place you move, {say.length(distance[place]!)} from the
        filament
        {isOpen && `; there the vapour arrives ${say.number(angle, 2)}° from the normal`}
      </p>
    </section>
  );
}
