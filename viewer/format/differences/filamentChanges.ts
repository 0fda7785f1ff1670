/** What differs about single filaments of a set that two designs have in common. */
import { formatQuantity } from '../../../engine/index.ts';
import type { FilamentSetDesign } from '../../../engine/design/designSchema.ts';
import { readFilamentTable, type ListedFilament } from '../../../engine/design/filamentTable.ts';
import { isSame } from './isSame.ts';

/** A change, and the filaments that it is true of. */
export interface FilamentChange {
  /** after the names: "out of use" or ": charge 0.43 g → 0.25 g" */
  readonly predicate: string;
  readonly names: readonly string[];
}

/** A set with what is needed to speak of its filaments. */
export interface SetSide {
  readonly set: FilamentSetDesign;
  readonly files: ReadonlyMap<string, Uint8Array>;
  /** kg, what a filament carries unless it has a charge of its own */
  readonly charge: number;
  /** names of the set's filaments, in order */
  readonly names: readonly string[];
}

const SHORT = 6;
const LONG = 12;

/** Two values as texts, with more digits if they would look alike. */
function twoTexts<T>(a: T, b: T, text: (value: T, digits: number) => string): string {
  const short = [text(a, SHORT), text(b, SHORT)];
  const [before, after] = short[0] === short[1] ? [text(a, LONG), text(b, LONG)] : short;
  return `${before} → ${after}`;
}

export const massText = (mass: number, digits: number): string => formatQuantity(mass, 'mass', 'mg', digits);
const lengthsText = (point: readonly number[], digits: number): string =>
  `(${point.map((value) => formatQuantity(value, 'length', 'm', digits)).join(', ')})`;

/** "its own charge" before and after; undefined is that of the set. */
function chargeChange(a: SetSide, b: SetSide, own: readonly [number | undefined, number | undefined]): string | null {
  const [before, after] = own;
  if (isSame(before, after)) return null;
  const text = (side: SetSide, mass: number | undefined): string =>
    mass === undefined ? `that of its set, ${massText(side.charge, SHORT)}` : massText(mass, SHORT);
  return before !== undefined && after !== undefined
    ? `: charge ${twoTexts(before, after, massText)}`
    : `: charge ${text(a, before)} → ${text(b, after)}`;
}

type Exception = NonNullable<FilamentSetDesign['exceptions']>[number];

function exceptionPredicates(a: SetSide, b: SetSide, old: Exception | undefined, own: Exception | undefined): string[] {
  const [wasOut, isOut] = [old?.outOfUse ?? false, own?.outOfUse ?? false];
  const charge = chargeChange(a, b, [old?.charge, own?.charge]);
  return [wasOut === isOut ? null : isOut ? ' out of use' : ' in use again', charge].filter((text) => text !== null);
}

/** Filaments with a state or charge of their own. A filament that only one design has is counted elsewhere. */
function exceptionChanges(a: SetSide, b: SetSide): FilamentChange[] {
  const byNumber = ({ set }: SetSide) => new Map((set.exceptions ?? []).map((item) => [item.filament, item]));
  const [before, after] = [byNumber(a), byNumber(b)];
  const numbers = [...new Set([...before.keys(), ...after.keys()])].sort((first, second) => first - second);
  return numbers
    .filter((number) => b.names[number - 1] !== undefined)
    .flatMap((number) =>
      exceptionPredicates(a, b, before.get(number), after.get(number)).map((predicate) => ({
        predicate,
        names: [b.names[number - 1] ?? ''],
      })),
    );
}

/** The filaments of a list, whether they stand in the design, in CSV text or in a file beside it. */
function listedOf({ set, files }: SetSide): readonly ListedFilament[] {
  if (set.arrangement !== 'list') return [];
  if (set.filaments) return set.filaments;
  const text = set.csv ?? new TextDecoder().decode(files.get(set.file ?? ''));
  return readFilamentTable(text).filaments;
}

function listedPredicates(a: SetSide, b: SetSide, old: ListedFilament, own: ListedFilament): string[] {
  const axisText = (axis: ListedFilament['axis']): string =>
    axis === undefined ? 'that of its set' : typeof axis === 'string' ? axis : `(${axis.join(', ')})`;
  const found = [
    isSame(old.position, own.position)
      ? null
      : `: position ${twoTexts<readonly number[]>(old.position, own.position, lengthsText)}`,
    isSame(old.axis, own.axis) ? null : `: axis ${axisText(old.axis)} → ${axisText(own.axis)}`,
    old.feed === own.feed ? null : `: feed ${old.feed ?? 'that of its set'} → ${own.feed ?? 'that of its set'}`,
    chargeChange(a, b, [old.charge, own.charge]),
  ];
  return found.filter((text) => text !== null);
}

/** Filaments of two lists: matched by their own names, those without by their place. */
function listedChanges(a: SetSide, b: SetSide): FilamentChange[] {
  const [before, after] = [listedOf(a), listedOf(b)];
  const places = new Map(before.flatMap(({ name }, i) => (name === undefined ? [] : [[name, i] as const])));
  const taken = new Set<number>();
  const found: FilamentChange[] = [];
  after.forEach((own, i) => {
    const place = (own.name === undefined ? undefined : places.get(own.name)) ?? i;
    const old = taken.has(place) ? undefined : before[place];
    const names = [b.names[i] ?? ''];
    if (!old) {
      found.push({ predicate: ' added', names });
      return;
    }
    taken.add(place);
    if (old.name !== own.name) found.push({ predicate: ` renamed to ${names[0]}`, names: [a.names[place] ?? ''] });
    found.push(...listedPredicates(a, b, old, own).map((predicate) => ({ predicate, names })));
  });
  before.forEach((_, i) => {
    if (!taken.has(i)) found.push({ predicate: ' removed', names: [a.names[i] ?? ''] });
  });
  return found;
}

/** All that differs about single filaments, with filaments of the same change together. */
export function filamentChanges(a: SetSide, b: SetSide): FilamentChange[] {
  const byPredicate = new Map<string, string[]>();
  for (const { predicate, names } of [...listedChanges(a, b), ...exceptionChanges(a, b)])
    byPredicate.set(predicate, [...(byPredicate.get(predicate) ?? []), ...names]);
  return [...byPredicate].map(([predicate, names]) => ({ predicate, names }));
}
