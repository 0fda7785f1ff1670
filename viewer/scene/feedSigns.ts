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

/** The sign of each feed, in the order in which the plant names them. */
export function feedSignsOf({ filaments }: Plant): ReadonlyMap<string, FeedSign> {
  const setOf = new Map<string, number>();
  for (const { feed, set } of filaments) if (feed !== null && !setOf.has(feed)) setOf.set(feed, set);
  const names = [...setOf.keys()];
  const short = names.map((name, i) => (name.length <= SHORT ? name : lastNumber(name) || String(i + 1)));
  const isUnique = new Set(short).size === short.length;
  return new Map(
    names.map((name, i) => {
      const label = isUnique ? short[i]! : `${letter(setOf.get(name) ?? 0)}${short[i]}`;
      return [name, { name, label, color: COLORS[i % COLORS.length]! }];
    }),
  );
}

/** What the letters before the numbers stand for: "A outer, B inner"; empty without letters. */
export function feedLettersOf(plant: Plant): string {
  const labels = [...feedSignsOf(plant).values()].map(({ label }) => label);
  const used = new Set(labels.map((label) => label.charAt(0)));
  return plant.setNames.flatMap((name, i) => (used.has(letter(i)) ? [`${letter(i)} ${name}`] : [])).join(', ');
}
