/** Matching the parts of two designs by name. */
import { isSame } from './isSame.ts';
import type { Spot } from './spot.ts';

/** A part with its name and its place in its list. */
export interface NamedSpot {
  readonly name: string;
  readonly index: number;
  readonly spot: Spot;
}

export interface Matched {
  readonly pairs: readonly (readonly [NamedSpot, NamedSpot])[];
  readonly renamed: readonly (readonly [NamedSpot, NamedSpot])[];
  readonly removed: readonly NamedSpot[];
  readonly added: readonly NamedSpot[];
  /** whether those that both have stand in another order */
  readonly isReordered: boolean;
}

/** Whether two parts are the same but for their name. */
export type IsAlike = (a: NamedSpot, b: NamedSpot) => boolean;

const withoutName = ({ spot }: NamedSpot): unknown => ({ ...(spot.value as object), name: undefined });
export const isAlike: IsAlike = (a, b) => isSame(withoutName(a), withoutName(b));

/** Takes the first item that passes out of a list. */
function takeOut<T>(list: T[], passes: (item: T) => boolean): T | undefined {
  const i = list.findIndex(passes);
  return i < 0 ? undefined : list.splice(i, 1)[0];
}

/** Matches by name; of what is left, by being alike: those were renamed. */
export function matchNamed(a: readonly NamedSpot[], b: readonly NamedSpot[], alike: IsAlike = isAlike): Matched {
  const free = [...b];
  const pairs: [NamedSpot, NamedSpot][] = [];
  const left: NamedSpot[] = [];
  for (const item of a) {
    const partner = takeOut(free, ({ name }) => name === item.name);
    if (partner) pairs.push([item, partner]);
    else left.push(item);
  }
  const renamed: [NamedSpot, NamedSpot][] = [];
  const removed = left.filter((item) => {
    const partner = takeOut(free, (other) => alike(item, other));
    if (partner) renamed.push([item, partner]);
    return !partner;
  });
  const isReordered = pairs.some(([, { index }], i) => i > 0 && index < pairs[i - 1]![1].index);
  return { pairs, renamed, removed, added: free, isReordered };
}
