/** The report of the coat's film, or why there is none yet. */
import { useDeferredValue, useMemo } from 'react';
import { filmReport, type FilmReport } from '../../../engine/film/filmReport.ts';
import type { Coat } from '../../../engine/index.ts';
import { contaminationCase } from '../../../engine/vacuum/contaminationCase.ts';
import { useResult } from '../../state/resultStore.ts';
import { chosenFilm, chosenLight } from './chosenFilm.ts';
import { useFilmView, type FilmView } from './filmView.ts';

export type FilmState =
  | { readonly kind: 'waiting' }
  | { readonly kind: 'refused'; readonly coat: Coat; readonly messages: readonly string[] }
  | { readonly kind: 'ready'; readonly coat: Coat; readonly report: FilmReport };

function stateOf(coat: Coat, view: FilmView): FilmState {
  const { film: design } = coat.plant;
  const film = chosenFilm(design, view.indexTexts);
  if (!film.ok) return { kind: 'refused', coat, messages: film.messages };
  const light = chosenLight(view, design, film.value);
  if (!light.ok) return { kind: 'refused', coat, messages: light.messages };
  try {
    const { angle, remove } = view;
    const gas = contaminationCase(coat);
    const contamination = gas && { arrivalRatio: gas.worst };
    return {
      kind: 'ready',
      coat,
      report: filmReport(coat, { light: light.value, film: film.value, angle, remove, contamination }),
    };
  } catch (error) {
    // the engine refuses what its tables do not know, and says so
    if (error instanceof RangeError) return { kind: 'refused', coat, messages: [error.message] };
    throw error;
  }
}

/** One for the whole stage: its parts share the report. */
export function useFilm(): FilmState {
  const coat = useDeferredValue(useResult((state) => state.coat));
  const view = useDeferredValue(useFilmView());
  return useMemo(() => (coat ? stateOf(coat, view) : { kind: 'waiting' }), [coat, view]);
}
