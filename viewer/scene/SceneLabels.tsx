/** Names over the picture: the thinnest and thickest place, the witnesses, the probe. */
import type { RefObject } from 'react';
import type { Coat, Plant, Witness } from '../../engine/index.ts';
import { nm } from '../format/numbers.ts';
import type { Anchor } from './AnchoredLabels.tsx';
import { pinTop } from './Witnesses.tsx';

/** Witnesses that carry their name in the picture; more would hide it. */
const MAX_NAMES = 24;

const named = ({ witnesses }: Plant): readonly Witness[] => witnesses.slice(0, MAX_NAMES);

/** Places of all labels but the probe's. */
export function anchorsOf({ plant, statistics }: Coat): Anchor[] {
  return [
    { key: 'minimum', position: statistics.minimum.position },
    { key: 'maximum', position: statistics.maximum.position },
    ...named(plant).map((witness, i) => ({ key: `witness ${i}`, position: pinTop(witness, plant) })),
  ];
}

interface SceneLabelsProps {
  readonly coat: Coat;
  readonly container: RefObject<HTMLDivElement | null>;
}

export function SceneLabels({ coat, container }: SceneLabelsProps) {
  const { minimum, maximum } = coat.statistics;
  return (
    <div className="scene-labels" ref={container} aria-hidden="true">
      <span data-anchor="minimum" className="scene-label extreme">
        <b>▼</b>
        <span className="label-text">thinnest {nm(minimum.value, 1)}</span>
      </span>
      <span data-anchor="maximum" className="scene-label extreme">
        <b>▲</b>
        <span className="label-text">thickest {nm(maximum.value, 1)}</span>
      </span>
      {named(coat.plant).map(({ name }, i) => (
        <span key={`${i} ${name}`} data-anchor={`witness ${i}`} className="scene-label witness">
          <span className="label-text">{name}</span>
        </span>
      ))}
      <span data-anchor="probe" className="probe-mark" />
    </div>
  );
}
