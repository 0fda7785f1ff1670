/** What the mirror reflects, in plain words. */
import { VerdictLine } from '../../panels/VerdictLine.tsx';
import type { FilmState } from './useFilm.ts';

/** Light lost against a perfect coat, one reflection, from which on it is worth a word of caution, and then a bad one. */
const NOTICEABLE = 0.01;
const POOR = 0.05;

export function FilmVerdict({ state }: { readonly state: FilmState }) {
  if (state.kind === 'waiting')
    return <VerdictLine level="waiting" sentence="Working out the coat first." second="The film follows from it." />;
  if (state.kind === 'refused')
    return (
      <VerdictLine
        level="waiting"
        sentence="The film cannot be worked out in this light."
        second={state.messages[0] ?? ''}
      />
    );
  const { report } = state;
  const lost = 1 - report.lightLost.againstPerfect.perReflection.value;
  const isClear = report.opaque[0]?.isMet !== true;
  const level = lost > POOR ? 'bad' : lost > NOTICEABLE || isClear ? 'caution' : 'good';
  return (
    <VerdictLine
      level={level}
      sentence={report.sentence}
      second={`${report.lightLost.sentence} ${report.figure.sentence}`}
    />
  );
}
