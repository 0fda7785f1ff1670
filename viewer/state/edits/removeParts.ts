/** Takes parts out of the plant. */
import type { DesignFile, NamedFiles } from '../../../engine/index.ts';
import type { Part } from '../selection.ts';
import { shiftedExceptions } from './ownValues.ts';
import { withValue } from './path.ts';
import { edited, refused, withSet, type Edited } from './parts.ts';
import { asSingleFilaments, hasSingleFilaments } from './singleFilaments.ts';

const without = <Item>(items: readonly Item[], gone: ReadonlySet<number>): Item[] =>
  items.filter((_, i) => !gone.has(i));

/** The plant without some parts, all of them or none; refused for what a plant needs or still uses. */
export function removeParts(file: DesignFile, parts: readonly Part[], files?: NamedFiles): Edited {
  const reason = parts.map((part) => reasonToKeep(file, part, parts)).find((text) => text !== null);
  if (reason !== undefined) return refused(reason);
  const indices = (kind: 'set' | 'obstacle' | 'witness'): Set<number> =>
    new Set(parts.flatMap((part) => (part.kind === kind ? part.index : [])));
  let next = withoutFilaments(file, parts, files);
  const [sets, obstacles, witnesses] = [indices('set'), indices('obstacle'), indices('witness')];
  if (sets.size > 0) next = { ...next, filaments: without(next.filaments, sets) };
  if (obstacles.size > 0) next = { ...next, obstacles: without(next.obstacles ?? [], obstacles) };
  if (witnesses.size > 0) next = { ...next, witnesses: without(next.witnesses ?? [], witnesses) };
  for (const part of parts) if (part.kind === 'type') next = withValue(next, ['filamentTypes', part.name], undefined);
  return edited(next);
}

/** Why a part has to stay, or null. */
function reasonToKeep(file: DesignFile, part: Part, parts: readonly Part[]): string | null {
  switch (part.kind) {
    case 'type': {
      const users = file.filaments.filter(
        ({ type }, i) => type === part.name && !parts.some((other) => other.kind === 'set' && other.index === i),
      );
      if (users.length === 0) return null;
      const names = users.map(({ name }) => `“${name}”`).join(', ');
      return `The type “${part.name}” stays: ${names} ${users.length === 1 ? 'is' : 'are'} made of it. Give ${users.length === 1 ? 'it' : 'them'} another type first.`;
    }
    case 'filament':
      return file.filaments[part.set]?.arrangement === 'list' ||
        parts.some((other) => other.kind === 'set' && other.index === part.set)
        ? null
        : 'The filaments of a ring, line or grid stand at even distances: mark this one as out of use (X), or turn its set into single filaments first.';
    case 'feed':
      return 'A feed goes when no filament is fired by it: change the number of feeds of its set, or the feed of each filament.';
    case 'set':
    case 'obstacle':
    case 'witness':
      return null;
    default:
      return `A plant needs its ${part.kind}.`;
  }
}

function withoutFilaments(file: DesignFile, parts: readonly Part[], files: NamedFiles | undefined): DesignFile {
  const gone = parts.flatMap((part) => (part.kind === 'filament' ? part : [])).toSorted((a, b) => b.number - a.number);
  let next = file;
  for (const { set: iSet, number } of gone) {
    next = asSingleFilaments(next, iSet, files);
    const set = next.filaments[iSet];
    if (!hasSingleFilaments(set)) continue;
    const others = (set.exceptions ?? []).filter(({ filament }) => filament !== number);
    const exceptions = shiftedExceptions(others, number, -1);
    const rows = { ...set, filaments: set.filaments.toSpliced(number - 1, 1) };
    next = withSet(next, iSet, withValue(rows, ['exceptions'], exceptions.length > 0 ? exceptions : undefined));
  }
  return next;
}
