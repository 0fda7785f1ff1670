/** What differs between two designs, in words: every field of the schema, matched by name, compared by SI value. */
import type { Design } from '../../engine/design/designSchema.ts';
import { changesAt, changesIn, keysOfBoth } from './differences/changes.ts';
import type { Comparable, Difference } from './differences/difference.ts';
import { matchNamed, type NamedSpot } from './differences/matchNamed.ts';
import { namedDifferences } from './differences/namedDifferences.ts';
import { namedIn, setDifferences } from './differences/setDifferences.ts';
import { designSpot, isRecord, stepInto, type Spot } from './differences/spot.ts';
import { keyWords, spotText } from './differences/valueText.ts';

export type { Comparable, Difference } from './differences/difference.ts';

/** What is about no part of the plant. */
const DESIGN = 'design';
const SINGULAR: Readonly<Record<string, string>> = { obstacles: 'obstacle', witnesses: 'witness' };

function changed(part: string, changes: readonly string[]): Difference[] {
  return changes.map((change) => ({ kind: 'changed', part, text: `${part}: ${change}` }));
}

/** "changed" if a file of the same name has other content. */
function contentChange(a: Spot, b: Spot, sides: readonly [Comparable, Comparable]): string[] {
  const [name, other] = [stepInto(a, 'file').value, stepInto(b, 'file').value];
  if (typeof name !== 'string' || name !== other) return [];
  const [before, after] = sides.map(({ files }) => files.get(name));
  if (!before || !after) return [];
  const isEqual = before.length === after.length && before.every((byte, i) => byte === after[i]);
  return isEqual ? [] : [`content of ${name} changed, ${before.length} → ${after.length} bytes`];
}

/** A list of parts with names, such as obstacles. */
function partDifferences(key: string, a: Spot, b: Spot, sides: readonly [Comparable, Comparable]): Difference[] {
  const noun = SINGULAR[key] ?? keyWords(key);
  const part = ({ name }: NamedSpot): string => `${noun} ${name}`;
  const alike = (old: NamedSpot, own: NamedSpot): boolean =>
    changesIn(old.spot, own.spot, '', ['name']).length === 0 && contentChange(old.spot, own.spot, sides).length === 0;
  return namedDifferences(matchNamed(namedIn(a), namedIn(b), alike), {
    list: keyWords(key),
    part,
    about: ({ spot }) => {
      const shape = stepInto(spot, 'shape');
      return shape.value === undefined ? '' : spotText(shape);
    },
    changes: (old, own) =>
      changed(part(own), [...changesIn(old.spot, own.spot, '', ['name']), ...contentChange(old.spot, own.spot, sides)]),
  });
}

function typesIn(record: Spot): NamedSpot[] {
  return Object.keys(record.value as object).map((name, index) => ({ name, index, spot: stepInto(record, name) }));
}

/** Filament types and the sets made of them: a renamed type is no change of its sets. */
function filamentDifferences(a: Spot, b: Spot, sides: readonly [Comparable, Comparable]): Difference[] {
  const types = matchNamed(typesIn(stepInto(a, 'filamentTypes')), typesIn(stepInto(b, 'filamentTypes')));
  const part = ({ name }: NamedSpot): string => `filament type ${name}`;
  return [
    ...namedDifferences(
      { ...types, isReordered: false },
      {
        list: 'filament types',
        part,
        about: ({ spot }) => spotText(stepInto(stepInto(spot, 'emission'), 'law')),
        changes: (old, own) => changed(part(own), changesIn(old.spot, own.spot)),
      },
    ),
    ...setDifferences(stepInto(a, 'filaments'), stepInto(b, 'filaments'), {
      a: sides[0],
      b: sides[1],
      designs: [a.value as Design, b.value as Design],
      newTypeNames: new Map(types.renamed.map(([old, own]) => [old.name, own.name])),
    }),
  ];
}

const isNamedList = (value: unknown): boolean =>
  Array.isArray(value) && value.every((item) => isRecord(item) && typeof item['name'] === 'string');

function sectionDifferences(key: string, a: Spot, b: Spot, sides: readonly [Comparable, Comparable]): Difference[] {
  const [first, second] = [stepInto(a, key), stepInto(b, key)];
  if (isNamedList(first.value) && isNamedList(second.value)) return partDifferences(key, first, second, sides);
  if (isRecord(first.value) && isRecord(second.value)) return changed(keyWords(key), changesIn(first, second));
  return changed(DESIGN, changesAt(first, second, keyWords(key, first, second), key));
}

/**
 * All that differs from design a to design b; empty if both mean the same.
 *
 * Quantities are compared by what they mean: "34 in" equals "863.6 mm", and a default written out
 * equals one left out. Nothing is silent: what has no words of its own is told by its key and the
 * schema's description.
 */
export function differencesOf(a: Comparable, b: Comparable): Difference[] {
  const [first, second] = [designSpot(a.file), designSpot(b.file)];
  const sides = [a, b] as const;
  const found = keysOfBoth(first.value, second.value).flatMap((key) => {
    if (key === 'filamentTypes') return [];
    return key === 'filaments'
      ? filamentDifferences(first, second, sides)
      : sectionDifferences(key, first, second, sides);
  });
  // name and story come last: they change nothing in the tank
  return found.toSorted((p, q) => Number(p.part === DESIGN) - Number(q.part === DESIGN));
}
