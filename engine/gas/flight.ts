/** One atom from its filament to where it sticks. */
import { END_GAP } from '../geometry/scene.ts';
import { FACE, GLASS_BODY, WALL } from '../transport/massRays.ts';
import { clearanceAt } from './clearance.ts';
import { attemptCollision, DIRECTION, drawFlight, SPEED, thermalise } from './collisions.ts';
import { drawDirectionInto, drawFluxSpeed } from './draw.ts';
import { drawEmitter, emit } from './emitters.ts';
import { nearestHit } from './nearestHit.ts';
import { keyInto } from './random.ts';
import type { PreparedScatter } from './scatterProblem.ts';
import { faceCell, obstacleSlot, wallSlot } from './tallyGrid.ts';

/** Atoms of a chunk: the piece of work that is never divided. */
export const CHUNK = 512;

/** How an atom's flight went. */
export interface Ending {
  /** slot of the tally where it stuck */
  slot: number;
  /** FACE, GLASS_BODY, WALL, SHIELD or FIRST_OBSTACLE + caster, as in the mass budget */
  place: number;
  /** real ones, each computed; leaps stand for more */
  collisions: number;
  leaps: number;
  /** index of the sub-source that it left */
  emitter: number;
}

/** Is told each place of an atom where something happens to it: its start, collisions, leaps, its end. */
export type Recorder = (x: number, y: number, z: number) => void;

/** Room for one ending. */
export function createEnding(): Ending {
  return { slot: 0, place: 0, collisions: 0, leaps: 0, emitter: 0 };
}

const DRAWN = 7;
const SHIELDED = 3;

/**
 * Flies atom `iAtom` of chunk `iChunk`. The same key gives the same flight, to the bit, in any thread.
 *
 * Assumes: the gas is at rest, thermal, and neither warmed nor used up by the vapour; vapour atoms do not
 * meet each other; filaments catch nothing; an atom sticks where it first touches anything.
 *
 * @param ending overwritten
 * @param record told every place on the way, if given
 */
export function flyAtom(
  prepared: PreparedScatter,
  iChunk: number,
  iAtom: number,
  ending: Ending,
  record?: Recorder,
): void {
  const { problem, flight, emitters, encounters, leaps, slots, atom, random } = prepared;
  keyInto(random, problem.seed, iChunk, iAtom);
  ending.collisions = 0;
  ending.leaps = 0;
  ending.emitter = drawEmitter(emitters, random);
  const isCaught = emit(emitters, ending.emitter, atom, random);
  record?.(atom[0]!, atom[1]!, atom[2]!);
  if (isCaught) {
    ending.slot = slots.shield;
    ending.place = SHIELDED;
    return;
  }
  atom[SPEED] = prepared.vapourProbable * drawFluxSpeed(random);
  // the ball in which no surface lies: centre and radius²
  let ballX = 0;
  let ballY = 0;
  let ballZ = 0;
  let ball = 0;
  let ball2 = 0;
  let sinceBall = 0;
  let tMin = END_GAP;
  const long = prepared.flight.scene.tank.radius / 4;
  for (;;) {
    const length = drawFlight(encounters, atom, random);
    const x = atom[0]! + length * atom[DIRECTION]!;
    const y = atom[1]! + length * atom[DIRECTION + 1]!;
    const z = atom[2]! + length * atom[DIRECTION + 2]!;
    if (!((x - ballX) ** 2 + (y - ballY) ** 2 + (z - ballZ) ** 2 < ball2)) {
      // a new ball about the atom; a long flight will leave any, so it gets none
      ballX = atom[0]!;
      ballY = atom[1]!;
      ballZ = atom[2]!;
      ball = length < long ? clearanceAt(prepared.clearance, ballX, ballY, ballZ) : 0;
      ball2 = ball * ball;
      sinceBall = 0;
      if (!(length < ball) && endsOn(prepared, tMin, length, ending)) break;
    }
    atom[0] = x;
    atom[1] = y;
    atom[2] = z;
    tMin = 0;
    if (!attemptCollision(encounters, atom, random)) continue;
    ending.collisions++;
    record?.(x, y, z);
    if (++sinceBall < leaps.forgetting || ball < leaps.wanted) continue;
    const drift = Math.sqrt((x - ballX) ** 2 + (y - ballY) ** 2 + (z - ballZ) ** 2);
    const leap = ball - drift - leaps.margin;
    sinceBall = 0;
    if (leap < leaps.least) continue;
    drawDirectionInto(atom, DRAWN, random);
    atom[0] = x + leap * atom[DRAWN]!;
    atom[1] = y + leap * atom[DRAWN + 1]!;
    atom[2] = z + leap * atom[DRAWN + 2]!;
    thermalise(encounters, atom, random);
    ending.leaps++;
    ball2 = 0;
    record?.(atom[0]!, atom[1]!, atom[2]!);
  }
  if (record) {
    const t = flight.distance[0]!;
    record(atom[0]! + t * atom[DIRECTION]!, atom[1]! + t * atom[DIRECTION + 1]!, atom[2]! + t * atom[DIRECTION + 2]!);
  }
}

/** Whether a flight of the given length ends on a surface; if so, where. */
function endsOn(
  { problem, flight, slots, atom }: PreparedScatter,
  tMin: number,
  length: number,
  ending: Ending,
): boolean {
  const ox = atom[0]!;
  const oy = atom[1]!;
  const oz = atom[2]!;
  const dx = atom[DIRECTION]!;
  const dy = atom[DIRECTION + 1]!;
  const dz = atom[DIRECTION + 2]!;
  const place = nearestHit(flight, ox, oy, oz, dx, dy, dz, tMin, length);
  if (place < 0) return false;
  const t = flight.distance[0]!;
  ending.place = place;
  if (place === FACE) ending.slot = faceCell(problem.grid, flight.scene.glass.shape, ox + t * dx, oy + t * dy);
  else if (place === WALL)
    ending.slot = wallSlot(problem.grid, slots, flight.scene.tank, ox + t * dx, oy + t * dy, oz + t * dz);
  else ending.slot = place === GLASS_BODY ? slots.body : obstacleSlot(slots, place);
  return true;
}
