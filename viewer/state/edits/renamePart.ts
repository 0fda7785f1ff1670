/** Other names for parts; whatever refers to a part follows. */
import type { DesignFile, NamedFiles } from '../../../engine/index.ts';
import type { Part } from '../selection.ts';
import { edited, MAX_NAME, pathOfPart, refused, type Edited } from './parts.ts';
import { withValue } from './path.ts';
import { asSingleFilaments, hasSingleFilaments } from './singleFilaments.ts';

/** Names that no key of a design file may have. */
const FORBIDDEN = ['__proto__', 'constructor', 'prototype'];

/** The plant with another name for a part. */
export function renamePart(file: DesignFile, part: Part, wanted: string, files?: NamedFiles): Edited {
  const name = wanted.trim();
  if (name === '' || name.length > MAX_NAME)
    return refused(
      `Expected a name of 1 to ${MAX_NAME} characters; found ${name === '' ? 'nothing' : `${name.length} characters`}.`,
    );
  switch (part.kind) {
    case 'type':
      return renameType(file, part.name, name);
    case 'set':
    case 'obstacle':
    case 'witness':
      return edited(withValue(file, [...(pathOfPart(part) ?? []), 'name'], name), part);
    case 'filament':
      return renameFilament(file, part.set, part.number, name, files);
    case 'feed':
      return renameFeed(file, part.name, name, files);
    default:
      return refused('This part has no name of its own.');
  }
}

function renameType(file: DesignFile, old: string, name: string): Edited {
  if (name !== old && Object.hasOwn(file.filamentTypes, name))
    return refused(`The name “${name}” is taken by another type.`);
  if (FORBIDDEN.includes(name)) return refused(`“${name}” cannot be a name in a design file.`);
  const types = Object.entries(file.filamentTypes).map(([key, type]) => [key === old ? name : key, type]);
  return edited(
    {
      ...file,
      filamentTypes: Object.fromEntries(types),
      filaments: file.filaments.map((set) => (set.type === old ? { ...set, type: name } : set)),
    },
    { kind: 'type', name },
  );
}

function renameFilament(
  file: DesignFile,
  iSet: number,
  number: number,
  name: string,
  files: NamedFiles | undefined,
): Edited {
  if (file.filaments[iSet]?.arrangement !== 'list')
    return refused(
      'The filaments of a ring, line or grid are named by their set and number; turn the set into single filaments to name them.',
    );
  const part: Part = { kind: 'filament', set: iSet, number };
  const listed = asSingleFilaments(file, iSet, files);
  return edited(withValue(listed, ['filaments', iSet, 'filaments', number - 1, 'name'], name), part);
}

function renameFeed(file: DesignFile, old: string, name: string, files: NamedFiles | undefined): Edited {
  let isFound = false;
  let next = file;
  file.filaments.forEach((before, iSet) => {
    if (before.arrangement !== 'list') return;
    const listed = asSingleFilaments(file, iSet, files).filaments[iSet];
    if (!hasSingleFilaments(listed) || !listed.filaments.some(({ feed }) => feed === old)) return;
    isFound = true;
    const rows = listed.filaments.map((row) => (row.feed === old ? { ...row, feed: name } : row));
    next = withValue(next, ['filaments', iSet], { ...listed, filaments: rows });
  });
  return isFound
    ? edited(next, { kind: 'feed', name })
    : refused(
        'The feeds of a counted set are named by their set and number; turn the set into single filaments to name them.',
      );
}
