/** Choices judged by a computed value: the lesson names the answers, the engine says which one is right. */
import type { Choice } from './lesson.ts';

/** A range of values, up to `below`; the last has none. */
export interface RangeChoice {
  readonly text: string;
  readonly below?: number;
}

interface Feedback {
  readonly right: string;
  readonly wrong: string;
}

/** Choices that are ranges in rising order; right is the one that the value lies in. */
export function rangeChoices(value: number, ranges: readonly RangeChoice[], feedback: Feedback): Choice[] {
  const iRight = ranges.findIndex(({ below = Infinity }) => value < below);
  return ranges.map(({ text }, i) => choice(text, i === (iRight < 0 ? ranges.length - 1 : iRight), feedback));
}

/** Choices that each stand for a value above zero; right is the one whose ratio to the computed value is nearest to 1. */
export function nearestChoices(
  value: number,
  choices: readonly { readonly text: string; readonly value: number }[],
  feedback: Feedback,
): Choice[] {
  const away = choices.map((one) => Math.abs(Math.log(one.value / value)));
  const iRight = away.indexOf(Math.min(...away));
  return choices.map(({ text }, i) => choice(text, i === iRight, feedback));
}

/** Choices of which the computed index is right. */
export function indexChoices(iRight: number, texts: readonly string[], feedback: Feedback): Choice[] {
  return texts.map((text, i) => choice(text, i === iRight, feedback));
}

function choice(text: string, isRight: boolean, { right, wrong }: Feedback): Choice {
  return { text, isRight, feedback: isRight ? right : wrong };
}
