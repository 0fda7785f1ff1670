/** Where the learner is, and what was answered: kept by the browser. */
import { create } from 'zustand';
import { persist } from 'zustand/middleware';

/** Choices are kept by their text: another tank may offer others, which then are not chosen. */
export interface Answers {
  /** what was committed, or null before that */
  readonly prediction: string | null;
  readonly check: string | null;
  /** whether the check was once answered right */
  readonly isDone: boolean;
}

export type TankChoice = 'bench' | 'teaching';

export interface LearnState {
  readonly lesson: string;
  readonly tank: TankChoice;
  /** by the key of the lesson */
  readonly answers: Readonly<Record<string, Answers>>;
}

export const UNANSWERED: Answers = { prediction: null, check: null, isDone: false };

export const useLearn = create<LearnState>()(
  persist((): LearnState => ({ lesson: '', tank: 'bench', answers: {} }), { name: 'evenfall-learn' }),
);

export function showLesson(lesson: string): void {
  useLearn.setState({ lesson });
}

export function chooseTank(tank: TankChoice): void {
  useLearn.setState({ tank });
}

function change(lesson: string, changed: Partial<Answers>): void {
  useLearn.setState(({ answers }) => ({
    answers: { ...answers, [lesson]: { ...(answers[lesson] ?? UNANSWERED), ...changed } },
  }));
}

/** Commits a prediction. */
export const commitPrediction = (lesson: string, text: string): void => change(lesson, { prediction: text });
/** Takes prediction and check back, so that the lesson can be gone through again; what is done stays done. */
export const predictAgain = (lesson: string): void => change(lesson, { prediction: null, check: null });

/** Answers the check question. */
export function answerCheck(lesson: string, text: string, isRight: boolean): void {
  change(lesson, { check: text, ...(isRight && { isDone: true }) });
}

/** Takes the answer to the check question back. */
export const checkAgain = (lesson: string): void => change(lesson, { check: null });

/** Forgets all answers. */
export function forgetProgress(): void {
  useLearn.setState({ answers: {} });
}
