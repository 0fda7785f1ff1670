/** What the page shows about keeping: which design, who may write it, and what went wrong. */
import { create } from 'zustand';
import type { Problem } from '../../../engine/index.ts';
import type { KeptDesign } from './records.ts';

/**
 * `none`: an unedited preset; `held`: this tab may write; `elsewhere`: another tab had the design first; `lost`:
 * another tab has taken it over.
 */
export type Tenure = 'none' | 'held' | 'elsewhere' | 'lost';

export interface KeepState {
  readonly designId: string | null;
  /** the kept state on the page */
  readonly at: number | null;
  /** whether the design on the page lies in no file */
  readonly isUnsaved: boolean;
  /** whether some edit is not in the database yet */
  readonly isPending: boolean;
  readonly tenure: Tenure;
  /** why nothing can be kept, or null */
  readonly failure: string | null;
  /** a design of an earlier session that lies in no file */
  readonly offer: KeptDesign | null;
  /** counts what was written, here or in another tab */
  readonly revision: number;
}

export const useKeep = create<KeepState>(() => ({
  designId: null,
  at: null,
  isUnsaved: false,
  isPending: false,
  tenure: 'none',
  failure: null,
  offer: null,
  revision: 0,
}));

/** Notes that something was written. */
export function noteRevision(): void {
  useKeep.setState(({ revision }) => ({ revision: revision + 1 }));
}

/** Notes why the database does not work. */
export function noteFailure(error: unknown): void {
  useKeep.setState({ failure: error instanceof Error ? error.message : String(error) });
}

const READ_ONLY: Problem = {
  path: '',
  message: 'another tab has this design open: work on a copy, or take over here',
};

/** Why the design may not be edited in this tab; empty if it may. */
export function editRefusals(): readonly Problem[] {
  const { tenure } = useKeep.getState();
  return tenure === 'elsewhere' || tenure === 'lost' ? [READ_ONLY] : [];
}
