/** Which filaments a place on the mirror owes its coat to. */
import type { Filament, Plant } from '../../engine/index.ts';

export interface Contribution {
  readonly filament: Filament;
  /** m */
  readonly thickness: number;
  /** of the thickness at the place, 1 */
  readonly share: number;
}

/** Several filaments together. */
export interface Sum {
  readonly count: number;
  readonly thickness: number;
  readonly share: number;
}

export interface ContributionGroup {
  readonly set: number;
  readonly name: string;
  readonly total: Sum;
  /** the largest, largest first */
  readonly largest: readonly Contribution[];
  /** those that arrive and are not among the largest */
  readonly rest: Sum;
  /** numbers of charged filaments from which nothing arrives here: blocked, or turned away */
  readonly blocked: readonly number[];
  readonly outOfUse: readonly number[];
  readonly empty: readonly number[];
}

function sumOf(list: readonly Contribution[]): Sum {
  return {
    count: list.length,
    thickness: list.reduce((sum, { thickness }) => sum + thickness, 0),
    share: list.reduce((sum, { share }) => sum + share, 0),
  };
}

/**
 * Contributions grouped by set, the set that gives most first; a set without filaments is left out.
 *
 * @param contributions [filaments] m
 * @param most filaments named, over all sets
 */
export function contributionGroups(plant: Plant, contributions: Float64Array, most: number): ContributionGroup[] {
  const total = contributions.reduce((sum, value) => sum + value, 0);
  const all = plant.filaments.map((filament, f): Contribution => {
    const thickness = contributions[f] ?? 0;
    return { filament, thickness, share: total > 0 ? thickness / total : 0 };
  });
  const arriving = all.filter(({ thickness }) => thickness > 0).toSorted((p, q) => q.thickness - p.thickness);
  const largest = new Set(arriving.slice(0, most));
  const groups = plant.setNames.map((name, set): ContributionGroup => {
    const isMine = ({ filament }: Contribution): boolean => filament.set === set;
    const mine = arriving.filter(isMine);
    const silent = all.filter((item) => isMine(item) && !(item.thickness > 0)).map(({ filament }) => filament);
    const numbers = (wanted: (filament: Filament) => boolean): number[] =>
      silent.filter(wanted).map(({ number }) => number);
    return {
      set,
      name,
      total: sumOf(mine),
      largest: mine.filter((item) => largest.has(item)),
      rest: sumOf(mine.filter((item) => !largest.has(item))),
      outOfUse: numbers(({ outOfUse }) => outOfUse),
      empty: numbers(({ outOfUse, charge }) => !outOfUse && !(charge > 0)),
      blocked: numbers(({ outOfUse, charge }) => !outOfUse && charge > 0),
    };
  });
  return groups
    .filter(({ set }) => plant.filaments.some((filament) => filament.set === set))
    .toSorted((p, q) => q.total.thickness - p.total.thickness);
}

/** Whole numbers in words, neighbours joined: "1–3, 7". */
export function numberRanges(numbers: readonly number[]): string {
  const runs: [number, number][] = [];
  for (const number of numbers.toSorted((p, q) => p - q)) {
    const run = runs.at(-1);
    if (run && run[1] === number - 1) run[1] = number;
    else runs.push([number, number]);
  }
  return runs
    .map(([from, to]) => (from === to ? `${from}` : to === from + 1 ? `${from}, ${to}` : `${from}–${to}`))
    .join(', ');
}
