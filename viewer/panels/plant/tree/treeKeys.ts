/** The keyboard of the tree: moving, opening, selecting, type-ahead, editing. */
import type { KeyboardEvent } from 'react';
import { selectAll } from '../../../state/selection.ts';
import { add, deleteSelected, duplicateSelected, presentSelection, toggleOutOfUse } from './treeActions.ts';
import { ADDS, branchOf, type TreeRow } from './treeRows.ts';
import { choose, setOpen, useTree, type Choosing } from './treeState.ts';

/** Rows that a page key moves. */
const PAGE = 10;
/** Letters that follow each other faster than this are one word, ms. */
const SAME_WORD = 700;

let typed = { text: '', at: -Infinity };

type Said = (refusal: string | null) => void;

/** Handles a key on the tree; `say` gets the reason where an edit is refused, or null where it is made. */
export function onTreeKey(event: KeyboardEvent, rows: readonly TreeRow[], say: Said): void {
  if (event.altKey) return;
  const i = Math.max(
    0,
    rows.findIndex(({ key }) => key === useTree.getState().active),
  );
  const row = rows[i];
  if (!row) return;
  const isDone =
    moves(event, rows, i) ||
    branches(event, rows, row) ||
    selects(event, rows, row) ||
    edits(event, row, say) ||
    typesAhead(event, rows, i);
  if (!isDone) return;
  event.preventDefault();
  event.stopPropagation();
}

const howOf = ({ shiftKey, ctrlKey, metaKey }: KeyboardEvent): Choosing =>
  shiftKey ? 'range' : ctrlKey || metaKey ? 'none' : 'alone';

function moves(event: KeyboardEvent, rows: readonly TreeRow[], i: number): boolean {
  const last = rows.length - 1;
  const targets: Readonly<Record<string, number>> = {
    ArrowUp: i - 1,
    ArrowDown: i + 1,
    Home: 0,
    End: last,
    PageUp: i - PAGE,
    PageDown: i + PAGE,
  };
  const target = targets[event.key];
  const row = target === undefined ? undefined : rows[Math.min(last, Math.max(0, target))];
  if (row) choose(rows, row, howOf(event));
  return row !== undefined;
}

function branches(event: KeyboardEvent, rows: readonly TreeRow[], row: TreeRow): boolean {
  if (event.key === 'ArrowRight') {
    const child = rows.find(({ parent }) => parent === row.key);
    if (row.isOpen === false) setOpen([row.key], true);
    else if (child) choose(rows, child, 'alone');
    return true;
  }
  if (event.key === 'ArrowLeft') {
    const parent = rows.find(({ key }) => key === row.parent);
    if (row.isOpen) setOpen([row.key], false);
    else if (parent) choose(rows, parent, 'alone');
    return true;
  }
  if (event.key === '*') {
    setOpen(
      rows.filter(({ parent, isOpen }) => parent === row.parent && isOpen !== undefined).map(({ key }) => key),
      true,
    );
    return true;
  }
  if (event.key === 'Enter' && row.isOpen !== undefined) {
    setOpen([row.key], !row.isOpen);
    return true;
  }
  return false;
}

function selects(event: KeyboardEvent, rows: readonly TreeRow[], row: TreeRow): boolean {
  const isCommand = event.ctrlKey || event.metaKey;
  if (event.key === ' ' && performance.now() - typed.at > SAME_WORD) {
    choose(rows, row, isCommand ? 'also' : 'alone');
    return true;
  }
  if (isCommand && event.key.toLowerCase() === 'a') {
    selectAll(rows.filter(({ parent }) => parent === row.parent).flatMap(({ part }) => part ?? []));
    return true;
  }
  if (event.key === 'Escape' && presentSelection().length > 0) {
    selectAll([]);
    return true;
  }
  return false;
}

function edits(event: KeyboardEvent, row: TreeRow, say: Said): boolean {
  const isCommand = event.ctrlKey || event.metaKey;
  if (isCommand && event.key.toLowerCase() === 'd') {
    say(duplicateSelected());
    return true;
  }
  if (isCommand) return false;
  switch (event.key) {
    case 'F2':
      startRenaming(row);
      return true;
    case 'Delete':
      say(deleteSelected());
      return true;
    case 'Insert': {
      const branch = branchOf(row);
      const kind = branch && ADDS[branch];
      say(kind ? add(kind) : 'Go to filament types, filament sets, obstacles or witnesses to add one.');
      return true;
    }
    case 'x':
    case 'X': {
      const marks = presentSelection().some(({ kind }) => kind === 'filament' || kind === 'set' || kind === 'feed');
      if (!marks || performance.now() - typed.at < SAME_WORD) return false;
      say(toggleOutOfUse());
      return true;
    }
    default:
      return false;
  }
}

const NAMELESS = ['mirror', 'tank', 'vacuum', 'film'];

/** Lets the name of a row be typed, if it has one of its own. */
export function startRenaming({ key, part }: TreeRow): void {
  if (part && !NAMELESS.includes(part.kind)) useTree.setState({ renaming: key });
}

function typesAhead(event: KeyboardEvent, rows: readonly TreeRow[], i: number): boolean {
  if (event.key.length !== 1 || event.ctrlKey || event.metaKey) return false;
  const now = performance.now();
  const text = (now - typed.at < SAME_WORD ? typed.text : '') + event.key.toLowerCase();
  typed = { text, at: now };
  // a single letter goes on to the next such row; more letters may stay on this one
  const from = text.length === 1 ? i + 1 : i;
  const inOrder = [...rows.slice(from), ...rows.slice(0, from)];
  const match = inOrder.find(({ label }) => label.toLowerCase().startsWith(text));
  if (match) choose(rows, match, 'alone');
  return true;
}
