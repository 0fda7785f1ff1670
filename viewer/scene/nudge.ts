/** Moves a handle by steps instead of by pointer. */
import { useUnits } from '../state/units.ts';
import type { Handle } from './handles.ts';
import { moveTo } from './moveTo.ts';
import { useReadOut } from './readOutStore.ts';
import { readOut, stepOf } from './snap.ts';

/** Moves a handle by whole steps; tells where it came to stand. */
export function nudge(handle: Handle, steps: number, isFine: boolean): void {
  const units = useUnits.getState();
  const step = stepOf(handle.kind, isFine ? 'fine' : 'coarse', units);
  const { value, refusal } = moveTo(handle, handle.value, handle.value + steps * step, step);
  useReadOut.setState({ read: { label: handle.label, text: readOut(value, handle.kind, units), refusal, at: null } });
}
