/** Which branches of the tree are open, and which row the keys act on. */
import { create } from 'zustand';
import { partKey, selectAll, toggleSelected, type Part } from '../../../state/selection.ts';
import { branchesOf, type TreeRow } from './treeRows.ts';

export interface TreeState {
  readonly open: ReadonlySet<string>;
  /** key of the row that the keys act on */
  readonly active: string;
  /** key of the row from which Shift selects */
  readonly anchor: string;
  /** key of the row whose name is being typed */
  readonly renaming: string | null;
}

export const useTree = create<TreeState>(() => ({
  open: new Set(['types', 'sets', 'obstacles', 'witnesses']),
  active: 'mirror',
  anchor: 'mirror',
  renaming: null,
}));

/** Opens or closes branches. */
export function setOpen(keys: readonly string[], isOpen: boolean): void {
  const open = new Set(useTree.getState().open);
  for (const key of keys)
    if (isOpen) open.add(key);
    else open.delete(key);
  useTree.setState({ open });
}

/** Shows a part that was selected anywhere: its branches open, and the keys act on it. */
export function reveal(part: Part): void {
  const branches = branchesOf(part).filter((key) => !useTree.getState().open.has(key));
  if (branches.length > 0) setOpen(branches, true);
  useTree.setState({ active: partKey(part) });
}

/** How a row is chosen: alone, in addition, up to it from the last one, or only gone to. */
export type Choosing = 'alone' | 'also' | 'range' | 'none';

/** Goes to a row and selects by it. */
export function choose(rows: readonly TreeRow[], row: TreeRow, how: Choosing): void {
  if (how === 'range') {
    const parts = rangeTo(rows, row);
    useTree.setState({ active: row.key });
    if (parts.length > 0) selectAll(parts);
    return;
  }
  useTree.setState({ active: row.key, ...(how !== 'none' && { anchor: row.key }) });
  if (how === 'also' && row.part) toggleSelected(row.part);
  if (how === 'alone') selectAll(row.part ? [row.part] : []);
}

/** The parts between the anchor and a row; the row itself comes last, for the form to show it. */
function rangeTo(rows: readonly TreeRow[], row: TreeRow): Part[] {
  const [a, b] = [rows.findIndex(({ key }) => key === useTree.getState().anchor), rows.indexOf(row)];
  const from = a < 0 ? b : a;
  const between = rows.slice(Math.min(from, b), Math.max(from, b) + 1).flatMap(({ part }) => part ?? []);
  return from > b ? between.reverse() : between;
}
