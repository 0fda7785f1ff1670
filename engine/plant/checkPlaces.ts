/** Whether filaments, obstacles and witnesses stand where they can. */
import type { SoundParts } from '../design/checkDesign.ts';
import type { FilamentSetDesign, ObstacleDesign, WitnessDesign } from '../design/designSchema.ts';
import { isInGlass, sag, type MirrorShape } from '../geometry/mirrorShape.ts';
import { STRIDE, isInSolid, type Solids } from '../geometry/solids.ts';
import { isInTank, type Tank } from '../geometry/tank.ts';
import { metres, type Report } from './checkReport.ts';
import type { Filament } from './plant.ts';

/** Nearest that a loop may come to the reflecting face, m: nearer, it is no point source. */
const CLEARANCE = 1e-3;

export interface Surroundings {
  readonly shape: MirrorShape;
  readonly tank: Tank;
  readonly solids: Solids;
  readonly solidNames: readonly string[];
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
export function checkPositions(
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

function room(tank: Tank): string {
  return `radius ${metres(tank.radius)}, z from ${metres(tank.lowZ)} to ${metres(tank.highZ)}`;
}

/** Reports solids that lie wholly outside the tank, where they shade nothing: a slip of unit or sign. */
export function checkReach(obstacles: SoundParts['obstacles'], { tank, solids }: Surroundings, report: Report): void {
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

export function checkWitness(
  witness: WitnessDesign,
  path: string,
  place: Surroundings | undefined,
  report: Report,
): void {
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

export function checkObstacle(obstacle: ObstacleDesign, path: string, report: Report): void {
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
