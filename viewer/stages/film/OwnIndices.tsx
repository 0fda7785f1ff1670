/** Index tables of the user's own, in place of the built-in ones. */
import { useId, useMemo, useState } from 'react';
import { readIndexCsv } from '../../../engine/film/materials/indexCsv.ts';
import { LAYERS, useFilmView, type Layer } from './filmView.ts';

const EXAMPLE = 'wavelength,n,k\nnm,,\n400,0.49,4.86\n550,1.02,6.63\n700,1.9,8.1';

/** Faults shown; more are counted. */
const MOST = 6;

function Verdict({ text }: { readonly text: string }) {
  const read = useMemo(() => readIndexCsv(text, 'your table', ''), [text]);
  if (text.trim() === '') return <p className="quiet">The built-in table holds.</p>;
  if (read.ok) return <p className="quiet">In use, and nowhere but in this browser.</p>;
  return (
    <ul className="film-faults">
      {read.messages.slice(0, MOST).map((message) => (
        <li key={message}>{message}</li>
      ))}
      {read.messages.length > MOST && <li>… and {read.messages.length - MOST} more</li>}
    </ul>
  );
}

export function OwnIndices() {
  const id = useId();
  const [layer, setLayer] = useState<Layer>('aluminium');
  const texts = useFilmView((view) => view.indexTexts);
  const text = texts[layer] ?? '';
  const inUse = LAYERS.filter((name) => (texts[name] ?? '').trim() !== '');
  return (
    <details className="film-indices">
      <summary>
        Refractive indices of your own <small>{inUse.length > 0 ? inUse.join(', ') : 'none'}</small>
      </summary>
      <div className="map-choice">
        <label htmlFor={`${id}-layer`}>Layer</label>
        <select id={`${id}-layer`} value={layer} onChange={({ target }) => setLayer(target.value as Layer)}>
          {LAYERS.map((name) => (
            <option key={name}>{name}</option>
          ))}
        </select>
      </div>
      <label htmlFor={`${id}-csv`}>Table of the {layer}: wavelength, n and k, a unit row under the heading</label>
      <textarea
        id={`${id}-csv`}
        rows={5}
        spellCheck={false}
        value={text}
        placeholder={EXAMPLE}
        aria-describedby={`${id}-verdict`}
        onChange={({ target }) =>
          useFilmView.setState(({ indexTexts }) => ({ indexTexts: { ...indexTexts, [layer]: target.value } }))
        }
      />
      <div id={`${id}-verdict`} aria-live="polite">
        <Verdict text={text} />
      </div>
    </details>
  );
}
