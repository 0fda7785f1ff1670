/** A question with choices: one is committed by a button, then the answer is told. */
import { CircleCheck, CircleHelp } from 'lucide-react';
import { useId, useState, type ReactNode } from 'react';
import type { Choice, Question } from './lesson.ts';

interface QuestionBoxProps {
  readonly heading: string;
  readonly question: Question;
  /** text of the committed choice, or null */
  readonly committed: string | null;
  readonly commitLabel: string;
  readonly againLabel: string;
  readonly onCommit: (choice: Choice) => void;
  readonly onAgain: () => void;
  /** begins the answer to the right and to the other choices */
  readonly verdicts: readonly [right: string, other: string];
  /** under the answer */
  readonly children?: ReactNode;
}

function Answer({ choice, verdicts }: { readonly choice: Choice; readonly verdicts: readonly [string, string] }) {
  const Sign = choice.isRight ? CircleCheck : CircleHelp;
  return (
    <div className="learn-answer" data-right={choice.isRight || undefined}>
      <Sign aria-hidden="true" size={20} strokeWidth={1.75} />
      <p>
        <span className="strong">{choice.isRight ? verdicts[0] : verdicts[1]}</span> {choice.feedback}
      </p>
    </div>
  );
}

export function QuestionBox(props: QuestionBoxProps) {
  const { heading, question, committed, commitLabel, againLabel, onCommit, onAgain, verdicts, children } = props;
  const id = useId();
  const [picked, setPicked] = useState<string | null>(null);
  const chosen = question.choices.find(({ text }) => text === committed) ?? null;
  const marked = question.choices.find(({ text }) => text === (chosen?.text ?? picked)) ?? null;
  return (
    <section className="panel learn-question" aria-labelledby={id}>
      <h3 id={id}>{heading}</h3>
      <fieldset disabled={chosen !== null}>
        <legend>{question.text}</legend>
        {question.choices.map((choice) => (
          <label
            key={choice.text}
            className="learn-choice"
            data-told={(chosen && (choice.isRight ? 'right' : choice === chosen ? 'other' : null)) ?? undefined}
          >
            <input type="radio" name={id} checked={choice === marked} onChange={() => setPicked(choice.text)} />
            <span>
              {choice.text}
              {chosen && choice.isRight && <small> – so it is</small>}
              {choice === chosen && !choice.isRight && <small> – you said</small>}
            </span>
          </label>
        ))}
      </fieldset>
      <div className="learn-question-actions no-print">
        {chosen ? (
          <button type="button" onClick={onAgain}>
            {againLabel}
          </button>
        ) : (
          <button
            type="button"
            className="learn-primary"
            disabled={!marked}
            onClick={() => {
              if (marked) onCommit(marked);
            }}
          >
            {commitLabel}
          </button>
        )}
      </div>
      <div role="status">{chosen && <Answer choice={chosen} verdicts={verdicts} />}</div>
      {chosen && children}
    </section>
  );
}
