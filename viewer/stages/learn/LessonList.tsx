/** The lessons with what is done of each, the tank they take their numbers from, and the trainer's sheet. */
import { Circle, CircleCheck, CircleDot } from 'lucide-react';
import { useId } from 'react';
import { useDesign } from '../../state/designStore.ts';
import { teachingBench } from './bench.ts';
import { chooseTank, forgetProgress, showLesson, UNANSWERED, useLearn, type Answers } from './learnStore.ts';
import type { AnyLesson } from './lesson.ts';
import { TrainerButton } from './TrainerButton.tsx';

const STATES = {
  done: { Sign: CircleCheck, text: 'done' },
  begun: { Sign: CircleDot, text: 'begun' },
  open: { Sign: Circle, text: 'not begun' },
} as const;

const stateOf = ({ isDone, prediction }: Answers): keyof typeof STATES =>
  isDone ? 'done' : prediction === null ? 'open' : 'begun';

function TankChoices() {
  const id = useId();
  const tank = useLearn((state) => state.tank);
  const name = useDesign((state) => state.current.plant.name);
  const choices = [
    ['bench', name],
    ['teaching', teachingBench().plant.name],
  ] as const;
  return (
    <fieldset className="learn-tank">
      <legend>Numbers from</legend>
      {choices.map(([value, text]) => (
        <label key={value} className="learn-choice">
          <input type="radio" name={id} checked={tank === value} onChange={() => chooseTank(value)} />
          <span>
            {text}
            <small> {value === 'bench' ? 'on the bench' : 'a small one to learn with'}</small>
          </span>
        </label>
      ))}
    </fieldset>
  );
}

interface LessonListProps {
  readonly lessons: readonly AnyLesson[];
  readonly shown: AnyLesson;
}

export function LessonList({ lessons, shown }: LessonListProps) {
  const answers = useLearn((state) => state.answers);
  const states = lessons.map(({ key }) => stateOf(answers[key] ?? UNANSWERED));
  const doneCount = states.filter((state) => state === 'done').length;
  return (
    <nav className="panel learn-list" aria-labelledby="learn-list-title">
      <h3 id="learn-list-title">
        Lessons{' '}
        <small>
          {doneCount} of {lessons.length} done
        </small>
      </h3>
      <progress className="learn-progress" value={doneCount} max={lessons.length} aria-label="Lessons done" />
      <ol>
        {lessons.map(({ key, title }, i) => {
          const { Sign, text } = STATES[states[i]!];
          return (
            <li key={key}>
              <button
                type="button"
                aria-current={key === shown.key ? 'step' : undefined}
                data-state={states[i]}
                onClick={() => showLesson(key)}
              >
                <Sign aria-hidden="true" size={16} strokeWidth={1.75} />
                <span>
                  {i + 1}. {title}
                  <span className="visually-hidden">, {text}</span>
                </span>
              </button>
            </li>
          );
        })}
      </ol>
      <TankChoices />
      <div className="learn-list-actions">
        <TrainerButton />
        <button type="button" disabled={Object.keys(answers).length === 0} onClick={forgetProgress}>
          Forget my progress
        </button>
      </div>
    </nav>
  );
}
