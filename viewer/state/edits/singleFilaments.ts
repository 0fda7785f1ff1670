/** From a ring, line, grid or table to a list of single filaments that make the same plant. */
import { openPlantFile, type DesignFile, type Filament, type NamedFiles } from '../../../engine/index.ts';
import { readFilamentTable } from '../../../engine/design/filamentTable.ts';
import { directionNumbers, lengthUnit, pointText } from './lengths.ts';
import { MAX_NAME, withSet, type ListFile, type RowFile, type SetFile } from './parts.ts';
import { chargeText, tableText } from './tableText.ts';

/** A list whose filaments stand in the design itself. */
export type SingleFilaments = ListFile & { readonly filaments: RowFile[] };

/** Whether a set already is a list of single filaments. */
export function hasSingleFilaments(set: SetFile | undefined): set is SingleFilaments {
  return set?.arrangement === 'list' && set.filaments !== undefined;
}

/**
 * The same plant with one set as single filaments: places and axes written out, feeds as names. Charges
 * stay where they are: with the set, its type, or the exceptions. A broken design is left alone.
 */
export function asSingleFilaments(file: DesignFile, iSet: number, files?: NamedFiles): DesignFile {
  const set = file.filaments[iSet];
  if (!set || hasSingleFilaments(set)) return file;
  const opened = openPlantFile(file, files);
  if (!opened.ok) return file;
  const placed = opened.plant.filaments.filter((filament) => filament.set === iSet);
  const charges = tableCharges(set, files);
  const { name, type, charge, exceptions } = set;
  return withSet(file, iSet, {
    arrangement: 'list',
    name,
    type,
    ...(charge !== undefined && { charge }),
    filaments: placed.map((filament, i) => rowOf(filament, charges[i], unitOf(set))),
    ...(exceptions && { exceptions }),
  });
}

/** Charges that the rows of a table name, kg. */
function tableCharges(set: SetFile, files: NamedFiles | undefined): readonly (number | undefined)[] {
  if (set.arrangement !== 'list') return [];
  const bytes = set.file === undefined ? undefined : files?.get(set.file);
  const text = set.csv ?? (bytes && tableText(bytes));
  return text === undefined ? [] : readFilamentTable(text).filaments.map(({ charge }) => charge);
}

/** The unit that a set's places are written in. */
function unitOf(set: SetFile): string {
  switch (set.arrangement) {
    case 'ring':
      return lengthUnit(set.diameter);
    case 'line':
      return lengthUnit(set.from[0]);
    case 'grid':
      return lengthUnit(set.center[0]);
    case 'list':
      return 'm';
  }
}

function rowOf({ name, center, coilAxis, feed }: Filament, charge: number | undefined, unit: string): RowFile {
  return {
    ...(name.length <= MAX_NAME && { name }), // a longer one is made of the set's name, and is made again
    position: pointText(center, unit),
    axis: directionNumbers(coilAxis),
    ...(charge !== undefined && { charge: chargeText(charge) }),
    ...(feed !== null && { feed: shortFeed(feed) }),
  };
}

/** A feed's name within the limit, cut before its number. */
function shortFeed(feed: string): string {
  const end = /(?: feed)? \d+$/.exec(feed)?.[0] ?? '';
  return feed.length <= MAX_NAME ? feed : `${feed.slice(0, MAX_NAME - end.length)}${end}`;
}
