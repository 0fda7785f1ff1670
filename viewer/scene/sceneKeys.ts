/** Keys of the picture while it has the focus. */
import type { KeyboardEvent } from 'react';
import { useDesign } from '../state/designStore.ts';
import { partKey, select, useSelection, type Part } from '../state/selection.ts';
import { moveByKey, type KeyMove } from './keyMoves.ts';
import { useView, VIEWS, type ViewActions } from './views.ts';

const TURN = Math.PI / 18;
const ZOOM = 0.9;

/** Moves of the view by key. */
const VIEW_KEYS: Readonly<Record<string, (view: ViewActions) => void>> = {
  ArrowLeft: (view) => view.turn(-TURN, 0),
  ArrowRight: (view) => view.turn(TURN, 0),
  ArrowUp: (view) => view.turn(0, -TURN),
  ArrowDown: (view) => view.turn(0, TURN),
  '+': (view) => view.zoom(ZOOM),
  '=': (view) => view.zoom(ZOOM),
  '-': (view) => view.zoom(1 / ZOOM),
  Home: (view) => view.reset(),
  '0': (view) => view.reset(),
  ...Object.fromEntries(VIEWS.map(({ key, name }) => [key, (view: ViewActions) => view.show(name)])),
};

/** With Alt: which handle a key moves, and which way. A part has one of each list. */
const MOVE_KEYS: Readonly<Record<string, KeyMove>> = {
  ArrowRight: { handles: ['x', 'diameter', 'radius'], steps: 1 },
  ArrowLeft: { handles: ['x', 'diameter', 'radius'], steps: -1 },
  ArrowUp: { handles: ['y', 'diameter', 'angle'], steps: 1 },
  ArrowDown: { handles: ['y', 'diameter', 'angle'], steps: -1 },
  PageUp: { handles: ['z', 'height'], steps: 1 },
  PageDown: { handles: ['z', 'height'], steps: -1 },
};

/** Parts in the order in which N goes through them. */
function partsInOrder(): Part[] {
  const { file, plant } = useDesign.getState().current;
  const ofSet = (index: number): Part[] => [
    { kind: 'set', index },
    ...plant.filaments.flatMap(({ set, number }): Part[] => (set === index ? [{ kind: 'filament', set, number }] : [])),
  ];
  return [
    ...file.filaments.flatMap((_, index) => ofSet(index)),
    ...(file.obstacles ?? []).map((_, index): Part => ({ kind: 'obstacle', index })),
    ...(file.witnesses ?? []).map((_, index): Part => ({ kind: 'witness', index })),
    { kind: 'mirror' },
    { kind: 'tank' },
  ];
}

function selectNext(by: 1 | -1): void {
  const parts = partsInOrder();
  const last = useSelection.getState().parts.at(-1);
  const key = last && partKey(last);
  const at = parts.findIndex((part) => partKey(part) === key);
  const next = at < 0 ? (by === 1 ? 0 : parts.length - 1) : (at + by + parts.length) % parts.length;
  select(parts[next] ?? null);
}

function selectSet(): void {
  const last = useSelection.getState().parts.at(-1);
  if (last?.kind === 'filament') select({ kind: 'set', index: last.set });
}

/** Keys that select. */
const SELECT_KEYS: Readonly<Record<string, () => void>> = {
  n: () => selectNext(1),
  N: () => selectNext(-1),
  s: selectSet,
  Escape: () => select(null),
};

function act(event: KeyboardEvent): boolean {
  const { key, altKey, ctrlKey, metaKey, shiftKey } = event;
  if (ctrlKey || metaKey) return false;
  if (altKey) {
    const move = MOVE_KEYS[key];
    return move !== undefined && moveByKey(move, shiftKey);
  }
  const selects = SELECT_KEYS[key];
  const { actions } = useView.getState();
  const looks = VIEW_KEYS[key];
  selects?.();
  if (actions) looks?.(actions);
  return selects !== undefined || looks !== undefined;
}

export function onSceneKey(event: KeyboardEvent): void {
  if (act(event)) event.preventDefault();
}
