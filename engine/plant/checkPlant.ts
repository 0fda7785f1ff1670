/** What a plant must satisfy beyond the form of its file: names, and whether everything fits. */
import type { SoundParts } from '../design/checkDesign.ts';
import type {
  FilamentSetDesign,
  FilamentTypeDesign,
  MirrorDesign,
  ObstacleDesign,
  WitnessDesign,
} from '../design/designSchema.ts';
import { suggestion } from '../design/fields.ts';
import { MAX_FILAMENTS } from '../design/filamentSchema.ts';
import { joinPath, type Problem } from '../design/problem.ts';
import { backHeight, faceHeights, isInGlass, mirrorShape, sag, type MirrorShape } from '../geometry/mirrorShape.ts';
import { isInSolid, packSolids, STRIDE, type Solids } from '../geometry/solids.ts';
import { isInTank, tankOf, type Tank } from '../geometry/tank.ts';
import { filamentCount, placeFilaments, subSourceCount, typeCharge } from './placeFilaments.ts';
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
  if (place) checkReach(parts.obstacles, place, report);
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
  const end = 1 / Math.abs(shape.curvature) / Math.sqrt(Math.max(0, 1 + shape.conicConstant));
  if (!Number.isFinite(sag(shape, reach)) || (1 + shape.conicConstant) * (shape.curvature * reach) ** 2 > 0.999) {
    fail(
      'mirror.radiusOfCurvature',
      `expected a surface that reaches the rim at ${metres(reach)}; this one ${Number.isFinite(end) ? `ends at ${metres(end)}` : 'is infinitely high there'}`,
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
    report(`${path}.to`, `expected an end different from "from"; both are ${pointInMetres(obstacle.to)}`);
  if (obstacle.shape === 'cone frustum' && obstacle.fromDiameter + obstacle.toDiameter === 0)
    report(`${path}.toDiameter`, 'expected one end wider than zero; found zero at both');
  if (obstacle.shape === 'annulus' && obstacle.innerDiameter >= obstacle.outerDiameter)
    report(
      `${path}.innerDiameter`,
      `expected less than the outer diameter (${metres(obstacle.outerDiameter)}); found ${metres(obstacle.innerDiameter)}`,
    );
  if (obstacle.shape === 'mesh' && (obstacle.file === undefined) === (obstacle.data === undefined)) {
    const found = obstacle.file === undefined ? 'neither' : 'both';
    report(path, `expected either "file" or "data" with the mesh; found ${found}`);
  }
}

interface Surroundings {
  readonly shape: MirrorShape;
  readonly tank: Tank;
  readonly solids: Solids;
  readonly solidNames: readonly string[];
}

/** Reports solids that lie wholly outside the tank, where they shade nothing: a slip of unit or sign. */
function checkReach(obstacles: SoundParts['obstacles'], { tank, solids }: Surroundings, report: Report): void {
  let iSolid = 0;
  obstacles.forEach((obstacle, i) => {
    if (!obstacle || obstacle.shape === 'mesh') return;
    const o = STRIDE * iSolid++ + 17; // bounding sphere
    const [x = 0, y = 0, z = 0, radius = 0] = solids.records.subarray(o, o + 4);
    const isWithinWalls = Math.hypot(x - tank.centerX, y) - radius < tank.radius;
    if (isWithinWalls && z + radius > tank.lowZ && z - radius < tank.highZ) return;
    report(
      `obstacles[${i}]`,
      `expected an obstacle inside the tank (${room(tank)}); this one lies about ${pointInMetres([x, y, z])}`,
    );
  });
}

function room(tank: Tank): string {
  return `radius ${metres(tank.radius)}, z from ${metres(tank.lowZ)} to ${metres(tank.highZ)}`;
}

function checkSets(parts: SoundParts, place: Surroundings | undefined, report: Report): void {
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

/** What is wrong with where a point is, and the field of a ring that would put it right. */
interface Misplacement {
  readonly message: string;
  readonly ringField: '.diameter' | '.height' | '';
}

/** What is wrong with where a point of a filament is, or undefined. */
function misplacement(
  [x, y, z]: readonly [number, number, number],
  { shape, tank, solids, solidNames }: Surroundings,
): Misplacement | undefined {
  if (!isInTank(tank, x, y, z)) {
    const ringField = z > tank.lowZ && z < tank.highZ ? '.diameter' : '.height';
    return { ringField, message: `outside the tank (${room(tank)})` };
  }
  if (isInGlass(shape, x, y, z - CLEARANCE) || isInGlass(shape, x, y, z)) {
    const face = metres(sag(shape, Math.hypot(x, y)));
    return { ringField: '.height', message: `inside the glass or within 1 mm of it (face at z = ${face})` };
  }
  for (let i = 0; i < solids.count; i++)
    if (isInSolid(solids, i, x, y, z)) return { ringField: '', message: `inside the obstacle "${solidNames[i]}"` };
  return undefined;
}

/** Reports each misplaced filament of a list at its own place; of other sets the first, and how many more. */
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
      const fault = misplacement(at, place);
      if (fault)
        return [
          { number, ...fault, sentence: `filament ${number} reaches ${pointInMetres(at)}, which is ${fault.message}` },
        ];
    }
    return [];
  });
  const [first] = misplaced;
  if (!first) return;
  if (set.arrangement === 'list') {
    for (const { number, sentence } of misplaced) report(...listedPlace(set, path, number, sentence));
    return;
  }
  const more = misplaced.length > 1 ? ` (and ${misplaced.length - 1} more filaments)` : '';
  report(`${path}${set.arrangement === 'ring' ? first.ringField : ''}`, `${first.sentence}${more}`);
}

/** Path and message for the position of a listed filament: its own, or its row in a table. */
function listedPlace(
  set: Extract<FilamentSetDesign, { arrangement: 'list' }>,
  path: string,
  number: number,
  sentence: string,
): [path: string, message: string] {
  if (set.csv !== undefined) return [`${path}.csv`, `row ${number + 2}: ${sentence}`];
  if (set.file !== undefined) return [`${path}.file`, `row ${number + 2}: ${sentence}`];
  return [`${path}.filaments[${number - 1}].position`, sentence];
}

function pointInMetres(at: readonly number[]): string {
  return `(${at.map((v) => Number(v.toPrecision(4))).join(', ')}) m`;
}

function checkWitness(witness: WitnessDesign, path: string, place: Surroundings | undefined, report: Report): void {
  const onSurface = witness.radius !== undefined || witness.angle !== undefined;
  const isFree = witness.position !== undefined;
  if (onSurface === isFree) {
    report(path, `expected either "radius" and "angle", or "position"; found ${isFree ? 'both' : 'neither'}`);
    return;
  }
  for (const [key, example] of [
    ['radius', '0.4 m'],
    ['angle', '30 deg'],
  ] as const) {
    if (!onSurface || witness[key] !== undefined) continue;
    report(`${path}.${key}`, `expected the ${key} of the witness, such as "${example}"; found nothing`);
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
    return;
  }
  const [x, y, z] = witness.position ?? [0, 0, 0];
  const at = pointInMetres([x, y, z]);
  if (!isInTank(place.tank, x, y, z)) report(`${path}.position`, `expected a place inside the tank; found ${at}`);
  else if (isInGlass(place.shape, x, y, z) && isInGlass(place.shape, x, y, z + CLEARANCE)) {
    const face = metres(sag(place.shape, Math.hypot(x, y)));
    report(`${path}.position`, `expected a place outside the glass (face at z = ${face}); found ${at}`);
  }
}
