/** The parts of a plant: where they stand in the file, what they are called, which filaments they hold. */
import type { DesignFile, Filament, NamedFiles, Plant } from '../../../engine/index.ts';
import type { Part } from '../selection.ts';
import { valueAt, withValue, type Path } from './path.ts';

export type SetFile = DesignFile['filaments'][number];
export type ListFile = Extract<SetFile, { arrangement: 'list' }>;
export type RowFile = NonNullable<ListFile['filaments']>[number];
export type TypeFile = DesignFile['filamentTypes'][string];
export type ObstacleFile = NonNullable<DesignFile['obstacles']>[number];
export type WitnessFile = NonNullable<DesignFile['witnesses']>[number];

/** A design with the files that it names, and the plant that they make. */
export interface Present {
  readonly file: DesignFile;
  readonly files: NamedFiles;
  readonly plant: Plant;
}

/** What an edit made, or the sentence that says why there is nothing to make. */
export type Edited =
  | { readonly ok: true; readonly file: DesignFile; readonly part: Part | null }
  | { readonly ok: false; readonly reason: string };

export const refused = (reason: string): Edited => ({ ok: false, reason });
export const edited = (file: DesignFile, part: Part | null = null): Edited => ({ ok: true, file, part });

/** Longest name, characters. */
export const MAX_NAME = 80;

/** Path of a part's own section; null for what has none: single filaments and feeds. */
export function pathOfPart(part: Part): Path | null {
  switch (part.kind) {
    case 'type':
      return ['filamentTypes', part.name];
    case 'set':
      return ['filaments', part.index];
    case 'obstacle':
      return ['obstacles', part.index];
    case 'witness':
      return ['witnesses', part.index];
    case 'filament':
    case 'feed':
      return null;
    default:
      return [part.kind];
  }
}

/** Whether the plant still has this part. */
export function hasPart({ file, plant }: Omit<Present, 'files'>, part: Part): boolean {
  if (part.kind === 'filament')
    return plant.filaments.some(({ set, number }) => set === part.set && number === part.number);
  if (part.kind === 'feed') return plant.filaments.some(({ feed }) => feed === part.name);
  if (part.kind === 'vacuum' || part.kind === 'film') return true;
  return valueAt(file, pathOfPart(part) ?? []) !== undefined;
}

const ONLY_ONE = { mirror: 'Mirror', tank: 'Tank', vacuum: 'Vacuum', film: 'Film' } as const;

/** What a part is called. */
export function nameOfPart({ file, plant }: Omit<Present, 'files'>, part: Part): string {
  switch (part.kind) {
    case 'type':
    case 'feed':
      return part.name;
    case 'filament':
      return plant.filaments.find(({ set, number }) => set === part.set && number === part.number)?.name ?? '';
    case 'set':
    case 'obstacle':
    case 'witness': {
      const name = valueAt(file, [...(pathOfPart(part) ?? []), 'name']);
      return typeof name === 'string' ? name : '';
    }
    default:
      return ONLY_ONE[part.kind];
  }
}

/** The filaments among parts: single ones, and those of sets and feeds. */
export function filamentsOf(plant: Plant, parts: readonly Part[]): readonly Filament[] {
  return plant.filaments.filter((filament) =>
    parts.some(
      (part) =>
        (part.kind === 'filament' && part.set === filament.set && part.number === filament.number) ||
        (part.kind === 'set' && part.index === filament.set) ||
        (part.kind === 'feed' && part.name === filament.feed),
    ),
  );
}

/** A name like the wanted one that is still free: "outer", "outer 2", "outer 3". */
export function freeName(wanted: string, taken: Iterable<string>): string {
  const names = new Set(taken);
  if (!names.has(wanted)) return wanted;
  const stem = wanted.replace(/ \d+$/, '');
  for (let n = 2; ; n++) {
    const name = `${stem.slice(0, MAX_NAME - String(n).length - 1)} ${n}`;
    if (!names.has(name)) return name;
  }
}

/** The file with another set in a place. */
export function withSet(file: DesignFile, iSet: number, set: SetFile): DesignFile {
  return withValue(file, ['filaments', iSet], set);
}
