/** A second one of a part, beside it in the file. */
import type { DesignFile, NamedFiles } from '../../../engine/index.ts';
import type { Part } from '../selection.ts';
import { shiftedExceptions } from './ownValues.ts';
import { edited, freeName, refused, withSet, type Edited } from './parts.ts';
import { asSingleFilaments, hasSingleFilaments } from './singleFilaments.ts';

/** The plant with a part twice, the second under a name of its own. */
export function duplicatePart(file: DesignFile, part: Part, files?: NamedFiles): Edited {
  switch (part.kind) {
    case 'type':
      return duplicateType(file, part.name);
    case 'set':
      return edited(
        { ...file, filaments: withTwin(file.filaments, part.index) },
        { kind: 'set', index: part.index + 1 },
      );
    case 'obstacle':
      return edited(
        { ...file, obstacles: withTwin(file.obstacles ?? [], part.index) },
        { kind: 'obstacle', index: part.index + 1 },
      );
    case 'witness':
      return edited(
        { ...file, witnesses: withTwin(file.witnesses ?? [], part.index) },
        { kind: 'witness', index: part.index + 1 },
      );
    case 'filament':
      return duplicateFilament(file, part.set, part.number, files);
    case 'feed':
      return refused('A feed is not duplicated: its filaments belong to one feed only.');
    default:
      return refused('A plant has only one of these.');
  }
}

function withTwin<Item extends { readonly name: string }>(items: readonly Item[], index: number): Item[] {
  const item = items[index];
  if (!item) return [...items];
  const twin = {
    ...item,
    name: freeName(
      item.name,
      items.map(({ name }) => name),
    ),
  };
  return items.toSpliced(index + 1, 0, twin);
}

function duplicateType(file: DesignFile, name: string): Edited {
  const twin = freeName(name, Object.keys(file.filamentTypes));
  const types = Object.entries(file.filamentTypes).flatMap(([key, type]) =>
    key === name
      ? [
          [key, type],
          [twin, type],
        ]
      : [[key, type]],
  );
  return edited({ ...file, filamentTypes: Object.fromEntries(types) }, { kind: 'type', name: twin });
}

function duplicateFilament(file: DesignFile, iSet: number, number: number, files: NamedFiles | undefined): Edited {
  const before = file.filaments[iSet];
  if (before?.arrangement !== 'list')
    return refused(
      'The filaments of a ring, line or grid are counted; raise the number, or turn the set into single filaments first.',
    );
  const listed = asSingleFilaments(file, iSet, files);
  const set = listed.filaments[iSet];
  const row = hasSingleFilaments(set) ? set.filaments[number - 1] : undefined;
  if (!hasSingleFilaments(set) || !row) return refused('This filament is not there.');
  const names = set.filaments.flatMap(({ name }) => name ?? []);
  const twin = { ...row, ...(row.name !== undefined && { name: freeName(row.name, names) }) };
  const own = set.exceptions?.find(({ filament }) => filament === number);
  const exceptions = [
    ...shiftedExceptions(set.exceptions ?? [], number, 1),
    ...(own ? [{ ...own, filament: number + 1 }] : []),
  ].toSorted((a, b) => a.filament - b.filament);
  return edited(
    withSet(listed, iSet, {
      ...set,
      filaments: set.filaments.toSpliced(number, 0, twin),
      ...(exceptions.length > 0 && { exceptions }),
    }),
    { kind: 'filament', set: iSet, number: number + 1 },
  );
}
