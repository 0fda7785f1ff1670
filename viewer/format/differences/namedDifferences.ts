/** Lists of named parts in words: what was added, removed, renamed, changed or put in another order. */
import type { Difference } from './difference.ts';
import type { Matched, NamedSpot } from './matchNamed.ts';

/** How the parts of one list are spoken of. */
export interface PartWords {
  /** all of them: "obstacles" */
  readonly list: string;
  /** one of them: "obstacle spider" */
  readonly part: (item: NamedSpot) => string;
  /** what a part is, said when it is added: "disc"; may be empty */
  readonly about: (item: NamedSpot) => string;
  readonly changes: (a: NamedSpot, b: NamedSpot) => readonly Difference[];
}

export function namedDifferences(matched: Matched, { list, part, about, changes }: PartWords): Difference[] {
  const { pairs, renamed, removed, added, isReordered } = matched;
  const order: Difference = {
    kind: 'changed',
    part: list,
    text: `${list}: another order, ${pairs.map(([, { name }]) => name).join(', ')} → ${pairs
      .toSorted((first, second) => first[1].index - second[1].index)
      .map(([, { name }]) => name)
      .join(', ')}`,
  };
  return [
    ...renamed.map(([a, b]): Difference => ({
      kind: 'renamed',
      part: part(b),
      text: `${part(a)} renamed to ${b.name}`,
    })),
    ...pairs.flatMap(([a, b]) => changes(a, b)),
    ...added.map((item): Difference => {
      const what = about(item);
      return { kind: 'added', part: part(item), text: `added ${part(item)}${what === '' ? '' : `: ${what}`}` };
    }),
    ...removed.map((item): Difference => ({ kind: 'removed', part: part(item), text: `${part(item)} removed` })),
    ...(isReordered ? [order] : []),
  ];
}
