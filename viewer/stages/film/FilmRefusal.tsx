/** Stands where the picture would be, when there is none: what is wrong, and the light to put it right. */
import { LightControls } from './LightControls.tsx';
import type { FilmState } from './useFilm.ts';

interface FilmRefusalProps {
  readonly state: FilmState;
  readonly hasLight?: boolean;
}

export function FilmRefusal({ state, hasLight = false }: FilmRefusalProps) {
  return (
    <section className="panel film-refusal" aria-label="Picture of the film">
      {hasLight && <LightControls />}
      {state.kind === 'refused' ? (
        <ul role="alert">
          {state.messages.map((message) => (
            <li key={message}>{message}</li>
          ))}
        </ul>
      ) : (
        <p className="quiet">The picture follows the first coat.</p>
      )}
    </section>
  );
}
