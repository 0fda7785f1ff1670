/** What a plant must satisfy beyond the form of its file: names, and whether everything fits. */
import { closest } from 'fastest-levenshtein';
import type { SoundParts } from '../design/checkDesign.ts';
import type {
  FilamentSetDesign,
  FilamentTypeDesign,
  MirrorDesign,
  ObstacleDesign,
  WitnessDesign,
} from '../design/designSchema.ts';
import { MAX_FILAMENTS } from '../design/filamentSchema.ts';
import { joinPath, type Problem } from '../design/problem.ts';
import { backHeight, faceHeights, isInGlass, mirrorShape, sag, type MirrorShape } from '../geometry/mirrorShape.ts';
import { isInSolid, packSolids, type Solids } from '../geometry/solids.ts';
import { isInTank, tankOf, type Tank } from '../geometry/tank.ts';
import { filamentCount, placeFilaments, typeCharge } from './placeFilaments.ts';
import type { Filament } from './plant.ts';

/** Nearest that a loop may come to the reflecting face, m: nearer, it is no point source. */
const CLEARANCE = 1e-3;
const MAX_SUB_SOURCES = 60_000;

type Report = (path: string, message: string) => void;

const metres = (value: number): string => `${Number(value.toPrecision(4))} m`;

/** Every problem of the sound parts of a design, checked against one another. */
export function checkPlant(parts: SoundParts): Problem[] {
  const problems: Problem[] = [];
  const report: Report = (path, message) => problems.push({ path, message });
  const shape = parts.mirror && checkMirror(parts.mirror, report);
  const tank = shape && parts.tank && checkTank(tankOf(parts.tank, shape), shape, report);
  for (const [name, type] of parts.filamentTypes) if (type) checkType(type, joinPath(['filamentTypes', name]), report);
  checkNames(parts.filaments, 'filaments', report);
  checkNames(parts.obstacles, 'obstacles', report);
  checkNames(parts.witnesses, 'witnesses', report);
  parts.obstacles.forEach((obstacle, i) => obstacle && checkObstacle(obstacle, `obstacles[${i}]`, report));
  const solid = parts.obstacles.flatMap((obstacle) => (obstacle && obstacle.shape !== 'mesh' ? [obstacle] : []));
  const place =
    shape && tank ? { shape, tank, solids: packSolids(solid), solidNames: solid.map(({ name }) => name) } : undefined;
  checkSets(parts, place, report);
  parts.witnesses.forEach((witness, i) => witness && checkWitness(witness, `witnesses[${i}]`, place, report));
  return problems;
}

/** The shape, unless the mirror contradicts itself. */
function checkMirror(mirror: MirrorDesign, report: Report): MirrorShape | undefined {
  const shape = mirrorShape(mirror);
  let isSound = true;
  const fail = (path: string, message: string): void => {
    isSound = false;
    report(path, message);
  };
  if (shape.holeRadius >= shape.rimRadius)
    fail(
      'mirror.holeDiameter',
      `expected a hole smaller than the glass (${metres(mirror.outerDiameter)}); found ${metres(mirror.holeDiameter)}`,
    );
  if (mirror.clearAperture?.outerDiameter !== undefined && mirror.clearAperture.outerDiameter > mirror.outerDiameter) {
    fail(
      'mirror.clearAperture.outerDiameter',
      `expected at most the outer diameter of the glass (${metres(mirror.outerDiameter)}); found ${metres(mirror.clearAperture.outerDiameter)}`,
    );
  }
  if (shape.clearInnerRadius >= shape.clearOuterRadius)
    fail(
      'mirror.clearAperture',
      `expected an inner diameter smaller than the outer one; found ${metres(2 * shape.clearInnerRadius)} and ${metres(2 * shape.clearOuterRadius)}`,
    );
  const reach = shape.centerX + shape.rimRadius;
  if (!Number.isFinite(sag(shape, reach)) || (1 + shape.conicConstant) * (shape.curvature * reach) ** 2 > 0.999) {
    fail(
      'mirror.radiusOfCurvature',
      `expected a surface that reaches the rim at ${metres(reach)}; this one ends at ${metres(1 / Math.abs(shape.curvature) / Math.sqrt(1 + shape.conicConstant))}`,
    );
  }
  return isSound ? shape : undefined;
}

function checkTank(tank: Tank, shape: MirrorShape, report: Report): Tank | undefined {
  let isSound = true;
  const fail = (path: string, message: string): void => {
    isSound = false;
    report(path, message);
  };
  if (shape.rimRadius > tank.radius)
    fail(
      'tank.diameter',
      `expected a tank wider than the glass (${metres(2 * shape.rimRadius)}); found ${metres(2 * tank.radius)}`,
    );
  if (backHeight(shape) < tank.lowZ)
    fail(
      'tank.behindMirror',
      `expected at least ${metres(-backHeight(shape))}, where the glass ends; found ${metres(-tank.lowZ)}`,
    );
  if (faceHeights(shape).high >= tank.highZ)
    fail(
      'tank.depth',
      `expected a tank deeper than the glass; its end wall would be at z = ${metres(tank.highZ)}, the face reaches ${metres(faceHeights(shape).high)}`,
    );
  return isSound ? tank : undefined;
}

function checkType(type: FilamentTypeDesign, path: string, report: Report): void {
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

function checkNames(items: readonly ({ readonly name: string } | undefined)[], list: string, report: Report): void {
  const first = new Map<string, number>();
  items.forEach((item, i) => {
    if (!item) return;
    const before = first.get(item.name);
    if (before === undefined) first.set(item.name, i);
    else report(`${list}[${i}].name`, `the name "${item.name}" is taken by ${list}[${before}]; each needs its own`);
  });
}

function checkObstacle(obstacle: ObstacleDesign, path: string, report: Report): void {
  if ('from' in obstacle && obstacle.from.every((x, k) => x === obstacle.to[k as 0]))
    report(`${path}.to`, 'expected an end different from "from"');
  if (obstacle.shape === 'cone frustum' && obstacle.fromDiameter + obstacle.toDiameter === 0)
    report(`${path}.toDiameter`, 'expected one end wider than zero');
  if (obstacle.shape === 'annulus' && obstacle.innerDiameter >= obstacle.outerDiameter)
    report(
      `${path}.innerDiameter`,
      `expected less than the outer diameter (${metres(obstacle.outerDiameter)}); found ${metres(obstacle.innerDiameter)}`,
    );
  if (obstacle.shape === 'mesh' && (obstacle.file === undefined) === (obstacle.data === undefined))
    report(path, 'expected either "file" or "data" with the mesh');
}

interface Surroundings {
  readonly shape: MirrorShape;
  readonly tank: Tank;
  readonly solids: Solids;
  readonly solidNames: readonly string[];
}

function checkSets(parts: SoundParts, place: Surroundings | undefined, report: Report): void {
  let filaments = 0;
  let subSources = 0;
  parts.filaments.forEach((set, i) => {
    if (!set) return;
    const path = `filaments[${i}]`;
    filaments += filamentCount(set);
    const type = checkSetType(set, parts.filamentTypes, path, report);
    checkExceptions(set, path, report);
    if (!type) return;
    if (set.charge === undefined && typeCharge(type) === undefined) checkListedCharges(set, path, report);
    subSources += filamentCount(set) * type.loops;
    const isSmall = filaments <= MAX_FILAMENTS && subSources <= MAX_SUB_SOURCES;
    if (place && isSmall) checkPositions(placeFilaments(set, i, type, place.shape), set, path, place, report);
  });
  if (filaments > MAX_FILAMENTS)
    report('filaments', `expected at most ${MAX_FILAMENTS} filaments in all; found ${filaments}`);
  if (subSources > MAX_SUB_SOURCES)
    report('filaments', `expected at most ${MAX_SUB_SOURCES} loops in all; found ${subSources}`);
}

function checkSetType(
  set: FilamentSetDesign,
  types: SoundParts['filamentTypes'],
  path: string,
  report: Report,
): FilamentTypeDesign | undefined {
  if (types.has(set.type)) return types.get(set.type);
  const names = [...types.keys()];
  const known = names.length === 0 ? 'there are none' : `did you mean "${closest(set.type, names)}"?`;
  report(`${path}.type`, `expected a name from filamentTypes; found "${set.type}", ${known}`);
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
  if (set.arrangement === 'list' && set.filaments?.every(({ charge }) => charge !== undefined)) return;
  report(
    `${path}.charge`,
    'expected the aluminium on each filament, such as "0.27 g", here or as clipMass of its type; found nothing',
  );
}

/** What is wrong with where a point of a filament is, or undefined. */
function misplacement(
  [x, y, z]: readonly [number, number, number],
  { shape, tank, solids, solidNames }: Surroundings,
): string | undefined {
  if (!isInTank(tank, x, y, z))
    return `outside the tank (radius ${metres(tank.radius)}, z from ${metres(tank.lowZ)} to ${metres(tank.highZ)})`;
  if (isInGlass(shape, x, y, z - CLEARANCE) || isInGlass(shape, x, y, z))
    return `inside the glass or within 1 mm of it (face at z = ${metres(sag(shape, Math.hypot(x, y)))})`;
  for (let i = 0; i < solids.count; i++)
    if (isInSolid(solids, i, x, y, z)) return `inside the obstacle "${solidNames[i]}"`;
  return undefined;
}

/** Reports a set's first misplaced filament and how many more there are. */
function checkPositions(
  filaments: readonly Filament[],
  set: FilamentSetDesign,
  path: string,
  place: Surroundings,
  report: Report,
): void {
  const misplaced = filaments.flatMap(({ number, source }) => {
    for (let j = 0; j < source.count; j++) {
      const at = [...source.position.subarray(3 * j, 3 * j + 3)] as [number, number, number];
      const message = misplacement(at, place);
      if (message) return [{ number, message, at }];
    }
    return [];
  });
  const [first] = misplaced;
  if (!first) return;
  const more = misplaced.length > 1 ? ` (and ${misplaced.length - 1} more filaments)` : '';
  const field =
    set.arrangement === 'ring' && first.message.startsWith('inside the glass')
      ? '.height'
      : set.arrangement === 'ring'
        ? '.diameter'
        : '';
  report(
    `${path}${field}`,
    `filament ${first.number} at (${first.at.map((v) => Number(v.toPrecision(4))).join(', ')}) m is ${first.message}${more}`,
  );
}

function checkWitness(witness: WitnessDesign, path: string, place: Surroundings | undefined, report: Report): void {
  const onSurface = witness.radius !== undefined && witness.angle !== undefined;
  const isFree = witness.position !== undefined;
  if (onSurface === isFree || (witness.radius === undefined) !== (witness.angle === undefined)) {
    report(path, 'expected either "radius" and "angle", or "position"');
    return;
  }
  if (onSurface && witness.normal)
    report(`${path}.normal`, 'a witness given by radius and angle faces as the mirror does; remove the normal');
  if (!place) return;
  if (onSurface) {
    const x = place.shape.centerX + (witness.radius ?? 0) * Math.cos(witness.angle ?? 0);
    const y = (witness.radius ?? 0) * Math.sin(witness.angle ?? 0);
    const z = sag(place.shape, Math.hypot(x, y));
    if (!Number.isFinite(z) || !isInTank(place.tank, x, y, z))
      report(`${path}.radius`, `expected a place inside the tank; found ${metres(witness.radius ?? 0)}`);
  } else if (witness.position && !isInTank(place.tank, ...(witness.position as [number, number, number]))) {
    report(
      `${path}.position`,
      `expected a place inside the tank; found (${witness.position.map((v) => Number(v.toPrecision(4))).join(', ')}) m`,
    );
  }
}
