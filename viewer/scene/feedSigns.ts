/** Feeds by colour and short label: the colours alone would not do for everyone, the labels do. */
import type { Plant } from '../../engine/index.ts';

/** How a feed is shown. */
export interface FeedSign {
  readonly name: string;
  /** its number, with a letter for the set where sets count alike: "3" or "B3" */
  readonly label: string;
  readonly color: string;
}

/**
 * Colours that people with any common colour vision tell apart, without black and the pale yellow.
 * @see M. Okabe and K. Ito, Color Universal Design (2008); from memory of their table
 */
const COLORS = ['#0072b2', '#e69f00', '#009e73', '#d55e00', '#56b4e9', '#cc79a7'] as const;
/** Longest name that serves as its own label, characters. */
const SHORT = 4;

const lastNumber = (name: string): string => /(\d+)\D*$/.exec(name)?.[1] ?? '';
const letter = (index: number): string => String.fromCharCode(65 + (index % 26));

/** Each feed with the set that names it first. */
function setsOfFeeds({ filaments }: Plant): ReadonlyMap<string, number> {
  const sets = new Map<string, number>();
  for (const { feed, set } of filaments) if (feed !== null && !sets.has(feed)) sets.set(feed, set);
  return sets;
}

/** A feed's own name if it is short, else the number in it, else its place. */
const shortNames = (names: readonly string[]): string[] =>
  names.map((name, i) => (name.length <= SHORT ? name : lastNumber(name) || String(i + 1)));

const areUnique = (texts: readonly string[]): boolean => new Set(texts).size === texts.length;

/** The sign of each feed, in the order in which the plant names them. */
export function feedSignsOf(plant: Plant): ReadonlyMap<string, FeedSign> {
  const sets = setsOfFeeds(plant);
  const names = [...sets.keys()];
  const short = shortNames(names);
  const isPlain = areUnique(short);
  return new Map(
    names.map((name, i) => {
      const label = isPlain ? short[i]! : `${letter(sets.get(name) ?? 0)}${short[i]}`;
      return [name, { name, label, color: COLORS[i % COLORS.length]! }];
    }),
  );
}

/** What the letters before the numbers stand for: "A outer, B inner"; empty where numbers do alone. */
export function feedLettersOf(plant: Plant): string {
  const sets = setsOfFeeds(plant);
  if (areUnique(shortNames([...sets.keys()]))) return '';
  const used = [...new Set(sets.values())].toSorted((a, b) => a - b);
  return used.map((set) => `${letter(set)} ${plant.setNames[set] ?? ''}`).join(', ');
}
