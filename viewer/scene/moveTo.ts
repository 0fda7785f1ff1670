/** Moves a part as far toward a wanted value as the engine allows. */
import type { DesignFile, Problem } from '../../engine/index.ts';
import { editDesign } from '../state/editDesign.ts';

export interface Mover {
  /** name of the step that can be undone */
  readonly label: string;
  readonly apply: (value: number) => DesignFile;
}

/** Where it came to stand, and why not where it was wanted. */
export interface Reached {
  readonly value: number;
  readonly refusal: string | null;
}

/** Tries on the way back from a refused place: they find the last good one among 2^10. */
const TRIES = 10;

/**
 * Tries a value; if it is refused, goes in whole steps as near to it as it can.
 *
 * @param from the value at hand, which is good
 * @param step the way between is searched in multiples of this
 */
export function moveTo(mover: Mover, from: number, wanted: number, step: number): Reached {
  const attempt = (value: number): readonly Problem[] => editDesign(mover.label, () => mover.apply(value));
  const problems = attempt(wanted);
  if (problems.length === 0) return { value: wanted, refusal: null };
  const sign = Math.sign(wanted - from);
  let good = 0;
  let bad = Math.ceil(Math.abs(wanted - from) / step - 1e-9);
  let reason = problems[0]?.message ?? '';
  for (let i = 0; i < TRIES && bad - good > 1; i++) {
    const middle = (good + bad) >> 1;
    const found = attempt(from + sign * middle * step);
    if (found.length === 0) good = middle;
    else {
      bad = middle;
      reason = found[0]?.message ?? reason;
    }
  }
  return { value: from + sign * good * step, refusal: reason };
}
