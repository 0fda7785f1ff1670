/** Moves of the selected part by keys: gathered and made once a frame, however fast the keys come. */
import { beginGesture, endGesture, useGesture } from '../state/editDesign.ts';
import type { Handle } from './handles.ts';
import { nudge } from './nudge.ts';
import { currentHandles } from './useHandles.ts';

/** The handle that a key moves, whichever of these the part has, and by how many steps. */
export interface KeyMove {
  readonly handles: readonly Handle['key'][];
  readonly steps: number;
}

interface Waiting extends KeyMove {
  readonly isFine: boolean;
}

let waiting: Waiting[] = [];
let frameId = 0;
/** whether a key is down that moves, and whether the gesture that is under way is a key's */
let isHeld = false;
let isOurs = false;

/** Moves that go the same way, as one. */
function joined(moves: readonly Waiting[]): Waiting[] {
  const sums = new Map<string, Waiting>();
  for (const move of moves) {
    const key = `${move.handles.join()} ${move.isFine}`;
    sums.set(key, { ...move, steps: move.steps + (sums.get(key)?.steps ?? 0) });
  }
  return [...sums.values()];
}

function makeMoves(): void {
  frameId = 0;
  const moves = joined(waiting);
  waiting = [];
  if (!useGesture.getState().isActive) {
    beginGesture();
    isOurs = true;
  }
  for (const { handles, steps, isFine } of moves) {
    const handle = currentHandles().find(({ key }) => handles.includes(key));
    if (handle && steps !== 0) nudge(handle, steps, isFine);
  }
  if (!isHeld) endOurs();
}

function endOurs(): void {
  if (isOurs) endGesture();
  isOurs = false;
}

/** Takes a key's move; false if no part is selected that it could move. */
export function moveByKey(move: KeyMove, isFine: boolean): boolean {
  if (!currentHandles().some(({ key }) => move.handles.includes(key))) return false;
  waiting.push({ ...move, isFine });
  isHeld = true;
  if (frameId === 0) frameId = requestAnimationFrame(makeMoves);
  return true;
}

/** Notes that the keys are released: what they moved is one step. */
export function endKeyMoves(): void {
  isHeld = false;
  if (frameId === 0) endOurs();
}
