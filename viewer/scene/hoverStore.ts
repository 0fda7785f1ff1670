/** The part under the pointer. */
import { create } from 'zustand';
import { partKey, type Part } from '../state/selection.ts';

export interface Hovered {
  readonly part: Part;
  /** px from the picture's upper left */
  readonly at: readonly [number, number];
}

export const useHover = create<{ readonly hovered: Hovered | null }>(() => ({ hovered: null }));

/** Says what the pointer is over, or that it is over nothing. */
export function hover(hovered: Hovered | null): void {
  const before = useHover.getState().hovered;
  const isSame = hovered && before && partKey(hovered.part) === partKey(before.part);
  if (isSame && hovered.at[0] === before.at[0] && hovered.at[1] === before.at[1]) return;
  if (!hovered && !before) return;
  useHover.setState({ hovered });
}
