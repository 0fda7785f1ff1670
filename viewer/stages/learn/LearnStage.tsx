/** The Learn stage: one lesson at a time, each an experiment with the numbers of a real tank. */
import { GraduationCap } from 'lucide-react';
import { Suspense } from 'react';
import { useGlobalKeys, type KeyBinding } from '../../panels/home/useGlobalKeys.ts';
import { useUnits } from '../../state/units.ts';
import { StageFrame } from '../StageFrame.tsx';
import '../../panels/verdict.css';
import './learn.css';
import './experiment.css';
import { showLesson, UNANSWERED, useLearn } from './learnStore.ts';
import type { AnyLesson, Bench, PreparedLesson } from './lesson.ts';
import { LessonList } from './LessonList.tsx';
import { LessonSteps, LessonText } from './LessonText.tsx';
import { lessons } from './lessons/all.ts';
import { sayIn } from './say.ts';
import { useBench } from './useBench.ts';
import { PICTURE_TOOLS, usePrepared, type Preparation } from './usePrepared.ts';

/** Shows the lesson so many places further on, if there is one. */
function stepLesson(by: number): void {
  const at = indexOf(useLearn.getState().lesson);
  const next = lessons[at + by];
  if (next) showLesson(next.key);
}

const indexOf = (key: string): number =>
  Math.max(
    0,
    lessons.findIndex((lesson) => lesson.key === key),
  );

const KEYS: readonly KeyBinding[] = [
  { keys: ']', does: 'Next lesson', run: () => stepLesson(1) },
  { keys: '[', does: 'Previous lesson', run: () => stepLesson(-1) },
];

function LessonHead({
  lesson,
  at,
  tankName,
}: {
  readonly lesson: AnyLesson;
  readonly at: number;
  readonly tankName: string;
}) {
  return (
    <div className="verdict" role="status" aria-label="Aim of the lesson">
      <GraduationCap aria-hidden="true" size={32} strokeWidth={1.5} />
      <div>
        <p className="verdict-sentence">{lesson.aim}</p>
        <p className="verdict-second">
          Lesson {at + 1} of {lessons.length}: {lesson.title}. Numbers of {tankName}.
        </p>
      </div>
    </div>
  );
}

function Waiting({ state }: { readonly state: Exclude<Preparation, { kind: 'ready' }> }) {
  if (state.kind === 'refused')
    return (
      <div className="panel learn-waiting" role="alert">
        <p className="strong">This lesson cannot be held in this tank.</p>
        <p>{state.message}</p>
        <p>Choose the other tank beside the lessons, or go on to another lesson.</p>
      </div>
    );
  return (
    <div className="panel learn-waiting" role="status">
      <p>Working out your tank …</p>
      <progress value={state.share} aria-label="Working out your tank" />
    </div>
  );
}

function Picture({ lesson, prepared }: { readonly lesson: AnyLesson; readonly prepared: PreparedLesson }) {
  const say = sayIn(useUnits());
  const { prediction } = useLearn((state) => state.answers[lesson.key] ?? UNANSWERED);
  const isOpen = prepared.predict(say).choices.some(({ text }) => text === prediction);
  return (
    <div className="learn-experiment">
      <p className="learn-doing">
        <span className="strong">{isOpen ? 'Now try it.' : 'Predict first.'}</span>{' '}
        {isOpen ? lesson.doing : 'The experiment opens when your prediction is committed.'}
      </p>
      <Suspense fallback={<p className="quiet">Loading…</p>}>{prepared.picture(PICTURE_TOOLS, isOpen)}</Suspense>
    </div>
  );
}

interface ShownProps {
  readonly lesson: AnyLesson;
  readonly bench: Bench;
  readonly at: number;
}

function Shown({ lesson, bench, at }: ShownProps) {
  const state = usePrepared(lesson, bench);
  const { name } = bench.plant;
  return (
    <StageFrame
      sentence={<LessonHead lesson={lesson} at={at} tankName={name} />}
      aside={<LessonList lessons={lessons} shown={lesson} />}
      picture={
        state.kind === 'ready' ? (
          <Picture key={lesson.key} lesson={lesson} prepared={state.prepared} />
        ) : (
          <Waiting state={state} />
        )
      }
      numbers={
        <>
          {state.kind === 'ready' && (
            <LessonText key={lesson.key} lesson={lesson} prepared={state.prepared} tankName={name} />
          )}
          <LessonSteps lessons={lessons} at={at} />
        </>
      }
      numbersLabel="Prediction, explanation and check"
    />
  );
}

export function LearnStage() {
  useGlobalKeys('In the Learn stage', KEYS);
  const bench = useBench();
  const at = indexOf(useLearn((state) => state.lesson));
  return <Shown lesson={lessons[at]!} bench={bench} at={at} />;
}
