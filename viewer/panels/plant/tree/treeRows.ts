/** The plant as the rows of a tree. */
import type { DesignFile, Filament, Plant } from '../../../../engine/index.ts';
import type { AddedKind } from '../../../state/edits/addPart.ts';
import { partKey, type Part } from '../../../state/selection.ts';

/** A branch that gathers parts and is none itself. */
export type Branch = 'types' | 'sets' | 'feeds' | 'obstacles' | 'witnesses';

export interface TreeRow {
  readonly key: string;
  /** null for a branch */
  readonly part: Part | null;
  readonly branch: Branch | null;
  readonly label: string;
  /** what is said beside the label */
  readonly detail: string;
  readonly isOutOfUse: boolean;
  /** from 1 */
  readonly level: number;
  /** from 1, among the rows beside it */
  readonly position: number;
  readonly siblings: number;
  /** undefined if there is nothing to open */
  readonly isOpen: boolean | undefined;
  /** key of the row that it lies in */
  readonly parent: string | null;
}

/** A row before it has its place among others. */
interface Node {
  readonly key: string;
  readonly part: Part | null;
  readonly branch?: Branch;
  readonly label: string;
  readonly detail?: string;
  readonly isOutOfUse?: boolean;
  readonly children?: () => readonly Node[];
}

/** What each branch adds. */
export const ADDS: Readonly<Record<Branch, AddedKind | null>> = {
  types: 'type',
  sets: 'set',
  feeds: null,
  obstacles: 'obstacle',
  witnesses: 'witness',
};

interface Source {
  readonly file: DesignFile;
  readonly plant: Plant;
}

/** Writes a charge in the user's unit. */
export type WriteMass = (kilograms: number) => string;

const leaf = (part: Part, label: string, detail = ''): Node => ({ key: partKey(part), part, label, detail });

function branch(name: Branch, label: string, nodes: readonly Node[]): Node {
  return {
    key: name,
    part: null,
    branch: name,
    label,
    detail: String(nodes.length),
    ...(nodes.length > 0 && { children: () => nodes }),
  };
}

function filamentNode(filament: Filament, write: WriteMass): Node {
  const { set, number, name, charge, outOfUse } = filament;
  const detail = outOfUse ? `${write(charge)}, out of use` : write(charge);
  return { ...leaf({ kind: 'filament', set, number }, name, detail), isOutOfUse: outOfUse };
}

function setNode({ plant }: Source, set: DesignFile['filaments'][number], index: number, write: WriteMass): Node {
  const filaments = plant.filaments.filter((filament) => filament.set === index);
  const idle = filaments.filter(({ outOfUse }) => outOfUse).length;
  const detail = `${set.arrangement}, ${filaments.length}${idle > 0 ? `, ${idle} out of use` : ''}`;
  return {
    ...leaf({ kind: 'set', index }, set.name, detail),
    ...(filaments.length > 0 && { children: () => filaments.map((filament) => filamentNode(filament, write)) }),
  };
}

function feedNodes({ plant }: Source): Node[] {
  const byFeed = new Map<string, Filament[]>();
  for (const filament of plant.filaments) {
    if (filament.feed === null) continue;
    const known = byFeed.get(filament.feed);
    if (known) known.push(filament);
    else byFeed.set(filament.feed, [filament]);
  }
  return [...byFeed].map(([name, filaments]) => {
    const used = filaments.filter(({ outOfUse }) => !outOfUse).length;
    const count = filaments.length === 1 ? '1 filament' : `${filaments.length} filaments`;
    return {
      ...leaf({ kind: 'feed', name }, name, used < filaments.length ? `${used} of ${count}` : count),
      isOutOfUse: used === 0,
    };
  });
}

function nodesOf(source: Source, write: WriteMass): Node[] {
  const { file } = source;
  const types = Object.entries(file.filamentTypes);
  return [
    leaf({ kind: 'mirror' }, 'Mirror'),
    leaf({ kind: 'tank' }, 'Tank'),
    branch(
      'types',
      'Filament types',
      types.map(([name, { emission }]) => leaf({ kind: 'type', name }, name, emission.law)),
    ),
    branch(
      'sets',
      'Filament sets',
      file.filaments.map((set, i) => setNode(source, set, i, write)),
    ),
    branch('feeds', 'Feeds', feedNodes(source)),
    branch(
      'obstacles',
      'Obstacles',
      (file.obstacles ?? []).map((one, index) => leaf({ kind: 'obstacle', index }, one.name, one.shape)),
    ),
    branch(
      'witnesses',
      'Witnesses',
      (file.witnesses ?? []).map((one, index) => leaf({ kind: 'witness', index }, one.name)),
    ),
    leaf({ kind: 'vacuum' }, 'Vacuum'),
    leaf({ kind: 'film' }, 'Film'),
  ];
}

/** The rows that are to be seen while these branches are open. */
export function treeRows(source: Source, open: ReadonlySet<string>, write: WriteMass): TreeRow[] {
  const rows: TreeRow[] = [];
  const push = (nodes: readonly Node[], level: number, parent: string | null): void =>
    nodes.forEach(({ children, key, part, branch: own = null, label, detail = '', isOutOfUse = false }, i) => {
      const isOpen = children && open.has(key);
      const place = { level, position: i + 1, siblings: nodes.length, parent };
      rows.push({ key, part, branch: own, label, detail, isOutOfUse, isOpen, ...place });
      if (children && isOpen) push(children(), level + 1, key);
    });
  push(nodesOf(source, write), 1, null);
  return rows;
}

/** Keys of the branches that must be open for a part to be seen. */
export function branchesOf(part: Part): readonly string[] {
  switch (part.kind) {
    case 'type':
      return ['types'];
    case 'set':
      return ['sets'];
    case 'filament':
      return ['sets', partKey({ kind: 'set', index: part.set })];
    case 'feed':
      return ['feeds'];
    case 'obstacle':
      return ['obstacles'];
    case 'witness':
      return ['witnesses'];
    default:
      return [];
  }
}

/** The branch that a row belongs to; null for what stands alone. */
export function branchOf({ part, branch: own }: TreeRow): Branch | null {
  return own ?? ((part && branchesOf(part)[0]) as Branch | undefined) ?? null;
}
