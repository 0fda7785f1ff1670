/** Names over the picture and the mark of the probe; put in their places by OverlayPlacer. */
import { useMemo, type RefObject } from 'react';
import { useUnits, type Units } from '../state/units.ts';
import { labelsOf, type Label } from './labels.ts';
import { usePicture, type Picture } from './picture.ts';
import './overlay.css';

type Words = Pick<Label, 'key' | 'kind' | 'text' | 'color'>;

/** The labels' words alone: they stay the same while things move. */
function wordsOf(picture: Picture | null, units: Units): string {
  const words = picture
    ? labelsOf(picture, units).map(({ key, kind, text, color }): Words => ({
        key,
        kind,
        text,
        ...(color !== undefined && { color }),
      }))
    : [];
  return JSON.stringify(words);
}

const SIGNS: Partial<Record<Label['kind'], string>> = { minimum: '▼', maximum: '▲' };

export function SceneLabels({ container }: { readonly container: RefObject<HTMLDivElement | null> }) {
  const units = useUnits();
  const written = usePicture(({ picture }) => wordsOf(picture, units));
  const words = useMemo(() => JSON.parse(written) as Words[], [written]);
  return (
    <div className="scene-labels" ref={container} aria-hidden="true">
      {words.map(({ key, kind, text, color }) => (
        <span key={key} data-anchor={key} className={`scene-label ${SIGNS[kind] ? 'extreme' : kind}`}>
          {SIGNS[kind] !== undefined && <b>{SIGNS[kind]}</b>}
          <span className="label-text" style={color === undefined ? undefined : { borderColor: color }}>
            {text}
          </span>
        </span>
      ))}
      <span data-anchor="probe" className="probe-mark" />
    </div>
  );
}
