/**
 * What a lesson is. Each stands in one short file in lessons/: its facts come from the engine, all words that carry a
 * number are written from the facts, and the choices of both questions are judged by them.
 */
import { createElement, type ComponentType, type ReactNode } from 'react';
import type { ChunkRunner } from '../../../engine/gas/scatter.ts';
import type { Coat, Control, DesignFile, EvaluateOptions, NamedFiles, Plant } from '../../../engine/index.ts';
import type { Say } from './say.ts';

/** The tank that a lesson takes its numbers from. */
export interface Bench {
  readonly file: DesignFile;
  readonly files: NamedFiles;
  readonly plant: Plant;
}

/** What lessons compute with: the page gives its pool, tests their own evaluator. */
export interface Tools {
  readonly evaluate: (plant: Plant, options: EvaluateOptions) => Promise<Coat>;
  /** counts many atoms in the gas; in the thread that calls unless given */
  readonly fly?: ChunkRunner;
  /** shows how far the work is, lets the page breathe, and throws when nobody waits any more */
  readonly step: NonNullable<Control['step']>;
}

export interface Choice {
  readonly text: string;
  readonly isRight: boolean;
  /** said to those who chose it: why it is so, or what they may have thought of */
  readonly feedback: string;
}

export interface Question {
  readonly text: string;
  readonly choices: readonly Choice[];
}

export interface PictureProps<Facts> {
  readonly bench: Bench;
  readonly facts: Facts;
  readonly tools: Pick<Tools, 'evaluate'>;
  /** whether the prediction is committed: before that the picture must not tell the answer */
  readonly isOpen: boolean;
}

export interface Lesson<Facts> {
  readonly key: string;
  readonly title: string;
  /** one sentence */
  readonly aim: string;
  /** what to do once the prediction is committed */
  readonly doing: string;
  /** the numbers of a tank; long work calls tools.step */
  readonly facts: (bench: Bench, tools: Tools) => Promise<Facts>;
  readonly predict: (facts: Facts, say: Say) => Question;
  /** paragraphs, with the numbers of the tank */
  readonly explain: (facts: Facts, say: Say) => readonly string[];
  readonly check: (facts: Facts, say: Say) => Question;
  readonly Picture: ComponentType<PictureProps<Facts>>;
  /** where the lesson touches real work */
  readonly cautions?: { readonly title: string; readonly cautions: readonly string[] };
}

/** A lesson with the numbers of a tank in it. */
export interface PreparedLesson {
  readonly predict: (say: Say) => Question;
  readonly explain: (say: Say) => readonly string[];
  readonly check: (say: Say) => Question;
  readonly picture: (tools: Pick<Tools, 'evaluate'>, isOpen: boolean) => ReactNode;
}

/** A lesson whose facts are its own affair. */
export interface AnyLesson extends Pick<Lesson<unknown>, 'key' | 'title' | 'aim' | 'doing' | 'cautions'> {
  readonly prepare: (bench: Bench, tools: Tools) => Promise<PreparedLesson>;
}

/** Closes a lesson over its facts, so that lessons with different facts can stand in one list. */
export function closed<Facts>(lesson: Lesson<Facts>): AnyLesson {
  return {
    ...lesson,
    prepare: async (bench, tools) => {
      const facts = await lesson.facts(bench, tools);
      return {
        predict: (say) => lesson.predict(facts, say),
        explain: (say) => lesson.explain(facts, say),
        check: (say) => lesson.check(facts, say),
        picture: (shared, isOpen) => createElement(lesson.Picture, { bench, facts, tools: shared, isOpen }),
      };
    },
  };
}

/** The text of the right choice. */
export function rightChoice({ choices }: Question): Choice {
  const right = choices.find(({ isRight }) => isRight);
  if (!right) throw new Error('expected a question with a right choice; found none');
  return right;
}
