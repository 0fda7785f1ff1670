/** A lesson with the numbers of the chosen tank, worked out when it is first looked at. */
import { useEffect, useState } from 'react';
import type { Plant } from '../../../engine/index.ts';
import { evaluator, flyAtoms } from '../../state/evaluator.ts';
import type { AnyLesson, Bench, PreparedLesson, Tools } from './lesson.ts';

export type Preparation =
  | { readonly kind: 'working'; readonly share: number }
  | { readonly kind: 'ready'; readonly prepared: PreparedLesson }
  | { readonly kind: 'refused'; readonly message: string };

/** Longest stretch without letting the page paint and take input, ms. */
const STRETCH = 12;
/** Thrown inside work that nobody waits for any more. */
class Left extends Error {}

const known = new WeakMap<Plant, Map<string, PreparedLesson>>();

const knownOf = (bench: Bench, { key }: AnyLesson): PreparedLesson | undefined => known.get(bench.plant)?.get(key);

function remember(bench: Bench, { key }: AnyLesson, prepared: PreparedLesson): void {
  const lessons = known.get(bench.plant) ?? new Map<string, PreparedLesson>();
  known.set(bench.plant, lessons.set(key, prepared));
}

/** What lessons compute with on the page; `isWanted` tells whether anybody still waits. */
function pageTools(isWanted: () => boolean, onShare: (share: number) => void): Tools {
  let paused = performance.now();
  const step = async (share: number): Promise<void> => {
    if (!isWanted()) throw new Left();
    if (performance.now() - paused < STRETCH) return;
    onShare(share);
    await new Promise((resolve) => setTimeout(resolve, 0));
    paused = performance.now();
    if (!isWanted()) throw new Left();
  };
  const within = async (): Promise<void> => {
    if (!isWanted()) throw new Left();
    await new Promise((resolve) => setTimeout(resolve, 0));
  };
  return {
    step,
    fly: flyAtoms,
    evaluate: async (plant, options) => evaluator.evaluate(plant, options, { step: within }),
  };
}

/** Works a lesson out, or takes it from memory. */
export async function prepareLesson(
  lesson: AnyLesson,
  bench: Bench,
  isWanted: () => boolean,
  onShare: (share: number) => void,
): Promise<PreparedLesson> {
  const before = knownOf(bench, lesson);
  if (before) return before;
  const prepared = await lesson.prepare(bench, pageTools(isWanted, onShare));
  remember(bench, lesson, prepared);
  return prepared;
}

export function usePrepared(lesson: AnyLesson, bench: Bench): Preparation {
  const [state, setState] = useState<{ readonly of: readonly [AnyLesson, Bench]; readonly is: Preparation } | null>(
    null,
  );
  useEffect(() => {
    let isWanted = true;
    const tell = (is: Preparation): void => {
      if (isWanted) setState({ of: [lesson, bench], is });
    };
    prepareLesson(
      lesson,
      bench,
      () => isWanted,
      (share) => tell({ kind: 'working', share }),
    ).then(
      (prepared) => tell({ kind: 'ready', prepared }),
      (error: unknown) => tell({ kind: 'refused', message: error instanceof Error ? error.message : String(error) }),
    );
    return () => {
      isWanted = false;
    };
  }, [lesson, bench]);
  const before = knownOf(bench, lesson);
  if (before) return { kind: 'ready', prepared: before };
  const isOfThis = state?.of[0] === lesson && state.of[1] === bench;
  return isOfThis ? state.is : { kind: 'working', share: 0 };
}

/** What pictures compute with, as long as they are shown. */
export const PICTURE_TOOLS: Pick<Tools, 'evaluate'> = {
  evaluate: async (plant, options) => evaluator.evaluate(plant, options),
};
