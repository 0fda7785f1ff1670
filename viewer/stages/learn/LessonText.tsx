/** The words of a lesson: prediction, explanation, check. */
import { ArrowLeft, ArrowRight } from 'lucide-react';
import { useMemo } from 'react';
import { Cautions } from '../../panels/Cautions.tsx';
import { useUnits } from '../../state/units.ts';
import {
  answerCheck,
  checkAgain,
  commitPrediction,
  predictAgain,
  showLesson,
  UNANSWERED,
  useLearn,
} from './learnStore.ts';
import type { AnyLesson, PreparedLesson } from './lesson.ts';
import { QuestionBox } from './QuestionBox.tsx';
import { sayIn } from './say.ts';

interface LessonTextProps {
  readonly lesson: AnyLesson;
  readonly prepared: PreparedLesson;
  readonly tankName: string;
}

export function LessonText({ lesson, prepared, tankName }: LessonTextProps) {
  const { key, cautions } = lesson;
  const say = sayIn(useUnits());
  const { prediction, check } = useLearn((state) => state.answers[key] ?? UNANSWERED);
  const asked = prepared.predict(say);
  const isOpen = asked.choices.some(({ text }) => text === prediction);
  return (
    <>
      <QuestionBox
        heading="Predict"
        question={asked}
        committed={prediction}
        commitLabel="Commit my prediction"
        againLabel="Predict again"
        onCommit={({ text }) => commitPrediction(key, text)}
        onAgain={() => predictAgain(key)}
        verdicts={['As you predicted.', 'It turns out otherwise.']}
      />
      {isOpen && (
        <section className="panel learn-explanation" aria-label="Why">
          <h3>
            Why <small>numbers of {tankName}</small>
          </h3>
          {prepared.explain(say).map((paragraph) => (
            <p key={paragraph}>{paragraph}</p>
          ))}
        </section>
      )}
      {isOpen && (
        <QuestionBox
          heading="Check"
          question={prepared.check(say)}
          committed={check}
          commitLabel="Answer"
          againLabel="Try again"
          onCommit={({ text, isRight }) => answerCheck(key, text, isRight)}
          onAgain={() => checkAgain(key)}
          verdicts={['Right.', 'Not quite.']}
        />
      )}
      {cautions && <Cautions {...cautions} />}
    </>
  );
}

interface StepsProps {
  readonly lessons: readonly AnyLesson[];
  readonly at: number;
}

/** To the lessons before and after. */
export function LessonSteps({ lessons, at }: StepsProps) {
  const [before, after] = useMemo(() => [lessons[at - 1], lessons[at + 1]] as const, [lessons, at]);
  return (
    <nav className="learn-steps no-print" aria-label="Lessons before and after">
      <button type="button" disabled={!before} onClick={() => before && showLesson(before.key)}>
        <ArrowLeft aria-hidden="true" size={16} /> Previous<span className="visually-hidden"> lesson</span>
      </button>
      <button type="button" disabled={!after} onClick={() => after && showLesson(after.key)}>
        Next<span className="visually-hidden"> lesson</span> <ArrowRight aria-hidden="true" size={16} />
      </button>
    </nav>
  );
}
