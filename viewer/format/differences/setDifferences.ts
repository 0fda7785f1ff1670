/** What differs about the filament sets of two designs, and about their types. */
import { typeCharge } from '../../../engine/plant/placeFilaments.ts';
import type { Design } from '../../../engine/design/designSchema.ts';
import type { Comparable, Difference } from './difference.ts';
import { changesIn } from './changes.ts';
import { filamentChanges, massText, type FilamentChange, type SetSide } from './filamentChanges.ts';
import { isSame } from './isSame.ts';
import { isAlike, matchNamed, type NamedSpot } from './matchNamed.ts';
import { namedDifferences, type PartWords } from './namedDifferences.ts';
import { stepInto, type Spot } from './spot.ts';
import { spotText } from './valueText.ts';

type SetDesign = Design['filaments'][number];

/** Filaments named one by one before the rest is only counted. */
const MAX_NAMES = 12;
/** Changes of single filaments told for one set before the rest is only counted. */
const MAX_CHANGES = 12;

/** The two designs, and what types of the first are called in the second. */
export interface Sides {
  readonly a: Comparable;
  readonly b: Comparable;
  readonly designs: readonly [Design, Design];
  readonly newTypeNames: ReadonlyMap<string, string>;
}

const setOf = ({ spot }: NamedSpot): SetDesign => spot.value as SetDesign;
/** "ring outer"; a ring that is called "ring 1" is not called "ring ring 1". */
const setPart = (item: NamedSpot): string => {
  const { arrangement } = setOf(item);
  return item.name.startsWith(arrangement) ? item.name : `${arrangement} ${item.name}`;
};

function usualCharge(set: SetDesign, { filamentTypes }: Design): number {
  const type = filamentTypes[set.type];
  return set.charge ?? (type && typeCharge(type)) ?? 0;
}

/** "outer 3, 7 and 9": the set's name is said once. */
function namesText(names: readonly string[], set: string): string {
  const shown = names
    .slice(0, MAX_NAMES)
    .map((name, i) => (i > 0 && name.startsWith(`${set} `) ? name.slice(set.length + 1) : name));
  if (names.length > MAX_NAMES) shown.push(`${names.length - MAX_NAMES} more of ${set}`);
  const last = shown.pop() ?? '';
  return shown.length > 0 ? `${shown.join(', ')} and ${last}` : last;
}

function filamentDifferences(changes: readonly FilamentChange[], item: NamedSpot): Difference[] {
  const told = changes.slice(0, MAX_CHANGES).map(({ predicate, names }): Difference => {
    const part = `${names.length === 1 ? 'filament' : 'filaments'} ${namesText(names, item.name)}`;
    return { kind: 'changed', part, text: `${part}${predicate}` };
  });
  const rest = changes.slice(MAX_CHANGES).reduce((sum, { names }) => sum + names.length, 0);
  const more = `${setPart(item)}: ${rest} more changes of single filaments`;
  return rest > 0 ? [...told, { kind: 'changed', part: setPart(item), text: more }] : told;
}

/** Charge of the set, which its type gives where the set does not. */
function chargeDifferences(a: NamedSpot, b: NamedSpot, charges: readonly [number, number]): string[] {
  const spots = [stepInto(a.spot, 'charge'), stepInto(b.spot, 'charge')] as const;
  const isGiven = spots.map(({ value }) => value !== undefined);
  if (isSame(charges[0], charges[1]) && isGiven[0] === isGiven[1]) return [];
  const [before, after] = spots.map((spot, i) =>
    isGiven[i] ? spotText(spot) : `${massText(charges[i]!, 6)} by its type`,
  );
  return [`charge ${before} → ${after}`];
}

function sideOf(item: NamedSpot, side: Comparable, charge: number): SetSide {
  const filaments = side.plant.filaments.filter(({ set }) => set === item.index);
  return { set: setOf(item), files: side.files, charge, names: filaments.map(({ name }) => name) };
}

/** Where a list keeps its filaments. */
function sourceText(set: SetDesign): string | null {
  if (set.arrangement !== 'list') return null;
  return set.filaments ? 'in the design' : set.csv === undefined ? `in the file ${set.file}` : 'as CSV text';
}

const TOLD_APART = ['name', 'type', 'charge', 'exceptions'];
const LIST_SOURCES = ['filaments', 'csv', 'file'];

function singleChanges(a: NamedSpot, b: NamedSpot, sides: Sides): FilamentChange[] {
  const before = sideOf(a, sides.a, usualCharge(setOf(a), sides.designs[0]));
  return filamentChanges(before, sideOf(b, sides.b, usualCharge(setOf(b), sides.designs[1])));
}

function pairDifferences(a: NamedSpot, b: NamedSpot, sides: Sides): Difference[] {
  const [old, own] = [setOf(a), setOf(b)];
  const charges = [usualCharge(old, sides.designs[0]), usualCharge(own, sides.designs[1])] as const;
  const areLists = old.arrangement === 'list' && own.arrangement === 'list';
  const type = sides.newTypeNames.get(old.type) ?? old.type;
  const [before, after] = [sourceText(old), sourceText(own)];
  const changes = [
    ...(type === own.type ? [] : [`type ${type} → ${own.type}`]),
    ...changesIn(a.spot, b.spot, '', areLists ? [...TOLD_APART, ...LIST_SOURCES] : TOLD_APART),
    ...(areLists && before !== after ? [`filaments listed ${before} → ${after}`] : []),
    ...chargeDifferences(a, b, charges),
  ];
  const part = setPart(b);
  return [
    ...changes.map((change): Difference => ({ kind: 'changed', part, text: `${part}: ${change}` })),
    ...filamentDifferences(singleChanges(a, b, sides), b),
  ];
}

const filamentsText = (count: number): string => (count === 1 ? '1 filament' : `${count} filaments`);

function placesText(set: SetDesign, spot: Spot): string {
  const text = (key: string): string => spotText(stepInto(spot, key));
  switch (set.arrangement) {
    case 'ring':
      return `${filamentsText(set.count)} at ${text('diameter')}, height ${text('height')}`;
    case 'line':
      return `${filamentsText(set.count)} from ${text('from')} to ${text('to')}`;
    case 'grid':
      return `${set.columns} × ${set.rows} filaments around ${text('center')}`;
    case 'list':
      return `filaments listed ${sourceText(set)}`;
  }
}

/** Sets: added, removed, renamed, changed, reordered. */
export function setDifferences(a: Spot, b: Spot, sides: Sides): Difference[] {
  const words: PartWords = {
    list: 'filament sets',
    part: setPart,
    about: (item) => {
      const set = setOf(item);
      const usual = usualCharge(set, sides.designs[1]);
      const charge = usual > 0 ? `${massText(usual, 6)} each` : 'none for the whole set';
      return `${placesText(set, item.spot)}, type ${set.type}, charge ${charge}`;
    },
    changes: (old, own) => pairDifferences(old, own, sides),
  };
  const withType = (item: NamedSpot): NamedSpot => {
    const set = setOf(item);
    return { ...item, spot: { ...item.spot, value: { ...set, type: sides.newTypeNames.get(set.type) ?? set.type } } };
  };
  const alike = (old: NamedSpot, own: NamedSpot): boolean =>
    isAlike(withType(old), own) && singleChanges(old, own, sides).length === 0;
  return namedDifferences(matchNamed(namedIn(a), namedIn(b), alike), words);
}

/** The parts of a list by their names. */
export function namedIn(list: Spot): NamedSpot[] {
  return (list.value as readonly { readonly name: string }[]).map(({ name }, index) => ({
    name,
    index,
    spot: stepInto(list, index),
  }));
}
