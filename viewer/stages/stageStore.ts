/** The stage on the page: in the address, and kept by the browser for the next visit. */
import { create } from 'zustand';
import { persist } from 'zustand/middleware';
import { searchOf, stageInAddress } from './stageAddress.ts';
import type { Stage } from './stages.ts';

export interface StageState {
  readonly key: string;
  /** how often it was changed: the first stage of a visit does not take the focus */
  readonly changes: number;
}

export const useStage = create<StageState>()(
  persist((): StageState => ({ key: '', changes: 0 }), {
    name: 'evenfall-stage',
    partialize: ({ key }) => ({ key }),
  }),
);

function change(key: string): void {
  if (key !== useStage.getState().key) useStage.setState(({ changes }) => ({ key, changes: changes + 1 }));
}

/** Shows a stage, as a step that the browser's Back button takes back. */
export function showStage(stages: readonly Stage[], key: string): void {
  if (key === useStage.getState().key) return;
  const { pathname, search } = window.location;
  window.history.pushState(null, '', pathname + searchOf(stages, key, search));
  change(key);
}

/**
 * Chooses the first stage of a visit: the one in the address, or the one shown last, or the first; and follows the
 * Back and Forward buttons from then on. Answers which stage it is, so that it can be loaded at once.
 */
export function followStage(stages: readonly Stage[]): Stage {
  const [first] = stages;
  if (!first) throw new Error('expected at least one stage; found none');
  const { pathname, search, hash } = window.location;
  const named = stageInAddress(stages, search);
  const kept = stages.find(({ key }) => key === useStage.getState().key)?.key;
  const key = named ?? kept ?? first.key;
  useStage.setState({ key });
  window.history.replaceState(window.history.state, '', pathname + searchOf(stages, key, search) + hash);
  window.addEventListener('popstate', () => change(stageInAddress(stages, window.location.search) ?? first.key));
  return stages.find((stage) => stage.key === key) ?? first;
}
