/** Progress of a part within the whole. */
import type { Control } from './transport.ts';

/** A control whose steps fill a part of the caller's progress. */
export function staged(control: Control | undefined, from: number, to: number): Control | undefined {
  return control && { step: (share) => control.step(from + (to - from) * share) };
}
