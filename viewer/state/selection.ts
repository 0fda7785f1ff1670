/** What is selected: parts of the plant, the same in the tree, the form and the scene. */
import { create } from 'zustand';

/** One part of a design. Indices are those of the file; filaments count from 1 in their set. */
export type Part =
  | { readonly kind: 'mirror' | 'tank' | 'vacuum' | 'film' }
  | { readonly kind: 'type'; readonly name: string }
  | { readonly kind: 'set'; readonly index: number }
  | { readonly kind: 'filament'; readonly set: number; readonly number: number }
  | { readonly kind: 'feed'; readonly name: string }
  | { readonly kind: 'obstacle' | 'witness'; readonly index: number };

export interface SelectionState {
  /** in the order of selecting; the last one is shown in the form */
  readonly parts: readonly Part[];
}

export const useSelection = create<SelectionState>(() => ({ parts: [] }));

/** A text that is the same for the same part. */
export function partKey(part: Part): string {
  return Object.values(part).join('/');
}

/** Selects one part alone, or none. */
export function select(part: Part | null): void {
  useSelection.setState({ parts: part ? [part] : [] });
}

/** Adds a part to the selection, or takes it out. */
export function toggleSelected(part: Part): void {
  const { parts } = useSelection.getState();
  const others = parts.filter((other) => partKey(other) !== partKey(part));
  useSelection.setState({ parts: others.length < parts.length ? others : [...parts, part] });
}

/** Selects several parts at once. */
export function selectAll(parts: readonly Part[]): void {
  useSelection.setState({ parts });
}

/** Whether a part is among the selected. */
export function isSelected({ parts }: SelectionState, part: Part): boolean {
  const key = partKey(part);
  return parts.some((other) => partKey(other) === key);
}
