/** Edits of the design: each is checked by the engine first, and changes nothing if it is refused. */
import { create } from 'zustand';
import { openPlantFile, type DesignFile, type Problem } from '../../engine/index.ts';
import { editRefusals } from './keep/keepStore.ts';
import { holdPanels, useDesign, type DesignState, type Snapshot, type Step } from './designStore.ts';

/** Steps that can be taken back. */
const MAX_STEPS = 200;
/** Edits of the same thing that follow each other faster than this are one step, ms. */
const SAME_STEP = 1000;

let lastEdit = { label: '', at: -Infinity };

/** Whether the user is dragging: all edits from the first to the last one are then a single step. */
export const useGesture = create<{ readonly isActive: boolean }>(() => ({ isActive: false }));

/** The design and its history when the gesture began. */
let beforeGesture: DesignState | null = null;

/** Begins a drag; its edits become one step, however long it takes. */
export function beginGesture(): void {
  beforeGesture = useDesign.getState();
  lastEdit = { label: '', at: -Infinity };
  holdPanels(true);
  useGesture.setState({ isActive: true });
}

/** Ends a drag; the next edit is a step of its own. */
export function endGesture(): void {
  beforeGesture = null;
  lastEdit = { label: '', at: -Infinity };
  holdPanels(false);
  useGesture.setState({ isActive: false });
}

/** Ends a drag and takes back all that it did. */
export function cancelGesture(): void {
  if (beforeGesture) useDesign.setState(beforeGesture);
  endGesture();
}

/** Whether an edit belongs to the step before it. */
function continuesStep(label: string, now: number): boolean {
  const { past } = useDesign.getState();
  if (beforeGesture) return past !== beforeGesture.past && past.at(-1)?.label === label;
  return lastEdit.label === label && now - lastEdit.at < SAME_STEP && past.length > 0;
}

/** Makes a design the current one, as a step that can be undone. */
export function adopt(next: Snapshot, label: string): void {
  const { current, past } = useDesign.getState();
  const now = performance.now();
  const steps = continuesStep(label, now) ? past : [...past, { label, other: current }].slice(-MAX_STEPS);
  lastEdit = { label, at: now };
  useDesign.setState({ current: next, past: steps, future: [] });
}

/**
 * Tries an edit.
 *
 * @param label what is edited, such as "height of outer"
 * @param change makes the edited file; may return anything, the engine judges it
 * @returns the problems that speak against it; none if it was made
 */
export function editDesign(label: string, change: (file: DesignFile) => unknown): readonly Problem[] {
  const refusals = editRefusals();
  if (refusals.length > 0) return refusals;
  const { current } = useDesign.getState();
  const opened = openPlantFile(change(current.file), current.files);
  if (!opened.ok) return opened.problems;
  adopt({ file: opened.file, files: current.files, plant: opened.plant, presetId: null }, label);
  return [];
}

/** Moves the top of one pile of steps to the other. */
function shift(from: readonly Step[], to: readonly Step[], current: Snapshot) {
  const step = from.at(-1);
  return step && { from: from.slice(0, -1), to: [...to, { label: step.label, other: current }], next: step.other };
}

/** Takes back the last edit. */
export function undo(): void {
  if (editRefusals().length > 0) return;
  const { past, future, current } = useDesign.getState();
  const shifted = shift(past, future, current);
  if (!shifted) return;
  lastEdit = { label: '', at: -Infinity };
  useDesign.setState({ current: shifted.next, past: shifted.from, future: shifted.to });
}

/** Makes the edit again that was taken back last. */
export function redo(): void {
  if (editRefusals().length > 0) return;
  const { past, future, current } = useDesign.getState();
  const shifted = shift(future, past, current);
  if (!shifted) return;
  lastEdit = { label: '', at: -Infinity };
  useDesign.setState({ current: shifted.next, past: shifted.to, future: shifted.from });
}
