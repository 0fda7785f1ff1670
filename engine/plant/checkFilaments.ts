/** Filament types and sets: names, counts, charges, and whether each filament has its place. */
import type { SoundParts } from '../design/checkDesign.ts';
import type { FilamentSetDesign, FilamentTypeDesign } from '../design/designSchema.ts';
import { suggestion } from '../design/fields.ts';
import { MAX_FILAMENTS } from '../design/filamentSchema.ts';
import { checkPositions, type Surroundings } from './checkPlaces.ts';
import type { Report } from './checkReport.ts';
import { filamentCount, placeFilaments, subSourceCount, typeCharge } from './placeFilaments.ts';

const MAX_SUB_SOURCES = 60_000;

export function checkSets(parts: SoundParts, place: Surroundings | undefined, report: Report): void {
  let filaments = 0;
  let subSources = 0;
  parts.filaments.forEach((set, i) => {
    if (!set) return;
    const path = `filaments[${i}]`;
    filaments += filamentCount(set);
    const type = checkSetType(set, parts.filamentTypes, path, report);
    if (!isUnread(set)) {
      checkExceptions(set, path, report);
      checkFeeds(set, path, report);
    }
    if (!type) return;
    if (set.charge === undefined && typeCharge(type) === undefined) checkListedCharges(set, path, report);
    subSources += filamentCount(set) * subSourceCount(type);
    const isSmall = filaments <= MAX_FILAMENTS && subSources <= MAX_SUB_SOURCES;
    if (place && isSmall) checkPositions(placeFilaments(set, i, type, place.shape), set, path, place, report);
  });
  if (filaments > MAX_FILAMENTS)
    report('filaments', `expected at most ${MAX_FILAMENTS} filaments in all; found ${filaments}`);
  if (subSources > MAX_SUB_SOURCES)
    report('filaments', `expected at most ${MAX_SUB_SOURCES} loops and pieces of wire in all; found ${subSources}`);
}

/** Whether a set's table could not be read: what it holds is unknown then, not missing. */
function isUnread(set: FilamentSetDesign): boolean {
  return set.arrangement === 'list' && set.filaments === undefined;
}

function checkFeeds(set: FilamentSetDesign, path: string, report: Report): void {
  const most = filamentCount(set);
  if (set.feeds !== undefined && set.feeds > most)
    report(`${path}.feeds`, `expected at most ${most}, one for each filament; found ${set.feeds}`);
}

function checkSetType(
  set: FilamentSetDesign,
  types: SoundParts['filamentTypes'],
  path: string,
  report: Report,
): FilamentTypeDesign | undefined {
  if (types.has(set.type)) return types.get(set.type);
  const known = suggestion(set.type, [...types.keys()]);
  report(`${path}.type`, `expected a name from filamentTypes; found "${set.type}": ${known}`);
  return undefined;
}

function checkExceptions(set: FilamentSetDesign, path: string, report: Report): void {
  const seen = new Set<number>();
  (set.exceptions ?? []).forEach(({ filament }, i) => {
    if (filament > filamentCount(set))
      report(
        `${path}.exceptions[${i}].filament`,
        `expected a number from 1 to ${filamentCount(set)}; found ${filament}`,
      );
    if (seen.has(filament))
      report(`${path}.exceptions[${i}].filament`, `filament ${filament} already has an exception`);
    seen.add(filament);
  });
}

function checkListedCharges(set: FilamentSetDesign, path: string, report: Report): void {
  if (isUnread(set)) return;
  if (set.arrangement === 'list' && set.filaments?.every(({ charge }) => charge !== undefined)) return;
  report(
    `${path}.charge`,
    'expected the aluminium on each filament, such as "0.27 g", here or as clipMass of its type; found nothing',
  );
}

export function checkType(type: FilamentTypeDesign, path: string, report: Report): void {
  if (Array.isArray(type.clipsPerLoop) && type.clipsPerLoop.length !== type.loops) {
    report(
      `${path}.clipsPerLoop`,
      `expected a number for each of the ${type.loops} loops; found ${type.clipsPerLoop.length}`,
    );
  }
  if (type.path) {
    if (type.emission.law !== 'straight wire')
      report(`${path}.emission.law`, `a wire along a path emits by "straight wire"; found "${type.emission.law}"`);
    if (type.loops !== 1) report(`${path}.loops`, 'a wire along a path has no loops; remove them');
    const iSame = type.path.findIndex(
      (corner, i) => i > 0 && corner.every((x, k) => x === type.path?.[i - 1]?.[k as 0]),
    );
    if (iSame > 0) report(`${path}.path[${iSame}]`, 'expected a corner different from the one before');
  }
  if (
    type.emission.law === 'cosine power' &&
    type.emission.tilt !== undefined &&
    type.emission.direction !== undefined
  ) {
    report(`${path}.emission.tilt`, 'expected either "tilt" or "direction"; found both');
  }
}
