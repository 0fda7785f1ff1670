/**
 * The stages of the page, in the order of their row. Each answers one question.
 *
 * How to add one:
 *
 * 1. Make a folder viewer/stages/<key>/ with a component that takes no properties and returns a StageFrame:
 *
 *        export function VacuumStage() {
 *          return (
 *            <StageFrame
 *              sentence={<VerdictLine level="good" sentence="…" second="…" />}
 *              picture={<LogChart … />}
 *              numbers={<NumbersTable … />}
 *              numbersLabel="Numbers of the vacuum"
 *              aside={<QuantityField … />} // optional: what is set here
 *            />
 *          );
 *        }
 *
 * 2. List it below. `load` must be a dynamic import: the first view may not grow by what it does not show.
 *
 * What the shell does for a stage: its heading (the focus goes there when the stage is chosen), its place in the
 * address (`?stage=vacuum`), its number key, what is shown while it loads, and a message with a way out if it cannot be
 * loaded or throws. A stage that was left keeps its state and its place on the page, hidden; its effects are ended as if
 * it were taken away, and begin again when it is shown (React's Activity), so computations started in effects stop.
 * Therefore an effect must not reset what the user has done: it would do so each time the stage is shown. What must
 * survive loading the page again belongs in a store or in the design.
 *
 * Keys that make sense in one stage only: useGlobalKeys('In the Vacuum stage', BINDINGS) in its component. The digits
 * belong to the row of stages. Style sheets: one beside each component, imported by it, with the custom properties of
 * styles.css. In print a stage shows its sentence, its picture and its numbers; `no-print` hides what is for the screen
 * only.
 */
import type { ComponentType } from 'react';

export interface Stage {
  /** stands in the address: letters and hyphens */
  readonly key: string;
  readonly title: string;
  /** the one question that the stage answers */
  readonly question: string;
  /** brings the component, once it is wanted */
  readonly load: () => Promise<ComponentType>;
}

export const stages: readonly Stage[] = [
  {
    key: 'layout',
    title: 'Layout',
    question: 'How even is the coat, and where is it thin?',
    load: async () => (await import('./layout/LayoutStage.tsx')).LayoutStage,
  },
  {
    key: 'vacuum',
    title: 'Vacuum',
    question: 'Is the vacuum good enough, and when will it be?',
    load: async () => (await import('./vacuum/VacuumStage.tsx')).VacuumStage,
  },
  {
    key: 'film',
    title: 'Film',
    question: 'What will the mirror reflect, and what does the coat do to the figure?',
    load: async () => (await import('./film/FilmStage.tsx')).FilmStage,
  },
  {
    key: 'learn',
    title: 'Learn',
    question: 'Why does it work this way?',
    load: async () => (await import('./learn/LearnStage.tsx')).LearnStage,
  },
];
