/** The part that the pointer or the focus is on in a list or a chart: shown in the picture, but not selected. */
import { create } from 'zustand';
import { partKey, type Part } from './selection.ts';

export const usePointed = create<{ readonly part: Part | null }>(() => ({ part: null }));

/** Points at a part. */
export function pointAt(part: Part): void {
  usePointed.setState({ part });
}

/** Ends pointing at a part; another one that is pointed at by now stays. */
export function pointAway(part: Part): void {
  const { part: present } = usePointed.getState();
  if (present && partKey(present) === partKey(part)) usePointed.setState({ part: null });
}
