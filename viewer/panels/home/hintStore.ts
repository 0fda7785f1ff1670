/** The first hints: which of them are done with, remembered in the browser. */
import { create } from 'zustand';
import { persist } from 'zustand/middleware';
import type { DesignFile } from '../../../engine/index.ts';
import { useDesign } from '../../state/designStore.ts';
import { useVariants } from '../../state/variants/variantStore.ts';

export interface Hint {
  readonly id: string;
  readonly text: string;
}

/** In the order in which they are shown. */
export const HINTS: readonly Hint[] = [
  { id: 'ring', text: 'Drag a ring in the picture, and watch the coat follow.' },
  {
    id: 'failed',
    text: 'What if a filament fails? Select one and press X.',
  },
  { id: 'pin', text: 'Pin a design with P, change something, and compare both.' },
];

export const useHints = create<{ readonly done: readonly string[] }>()(
  persist(() => ({ done: [] as readonly string[] }), { name: 'evenfall-hints' }),
);

/** The hint to show: the first that is not done with. */
export function nextHint(done: readonly string[]): Hint | undefined {
  return HINTS.find(({ id }) => !done.includes(id));
}

/** Takes a hint away for good. */
export function finishHint(id: string): void {
  useHints.setState(({ done }) => (done.includes(id) ? { done } : { done: [...done, id] }));
}

/** Takes all hints away. */
export function finishAllHints(): void {
  useHints.setState({ done: HINTS.map(({ id }) => id) });
}

export function showHintsAgain(): void {
  useHints.setState({ done: [] });
}

/** Whether the user has moved or widened a ring of this plant. */
export function movedRing(before: DesignFile, after: DesignFile): boolean {
  return after.filaments.some((set, i) => {
    const old = before.filaments[i];
    if (set.arrangement !== 'ring' || old?.arrangement !== 'ring' || set.name !== old.name) return false;
    return set.diameter !== old.diameter || set.height !== old.height;
  });
}

const failedCount = (file: DesignFile): number =>
  file.filaments.reduce((sum, { exceptions = [] }) => sum + exceptions.filter(({ outOfUse }) => outOfUse).length, 0);

/** Whether more filaments of this plant are out of use. */
export function failedMore(before: DesignFile, after: DesignFile): boolean {
  return failedCount(after) > failedCount(before);
}

/** Watches what the user does; a hint whose advice is taken is done with. Returns how to end that. */
export function followHints(): () => void {
  const ends = [
    useDesign.subscribe(({ current, past }, before) => {
      // another plant altogether is no edit
      if (past === before.past || current.presetId !== null || current.file.name !== before.current.file.name) return;
      if (movedRing(before.current.file, current.file)) finishHint('ring');
      if (failedMore(before.current.file, current.file)) finishHint('failed');
    }),
    useVariants.subscribe(({ variants }, before) => {
      if (variants.length > before.variants.length) finishHint('pin');
    }),
  ];
  return () => ends.forEach((end) => end());
}
