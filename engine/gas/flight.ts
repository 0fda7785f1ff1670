/** One atom from its filament to where it sticks. */
import { END_GAP } from '../geometry/scene.ts';
import { FACE, GLASS_BODY, SHIELD, WALL } from '../transport/massRays.ts';
import { driftInBall, placeBall, RADIUS, staysInBall } from './ball.ts';
import { advance, attemptCollision, DIRECTION, drawFlight, SPEED, thermalise } from './collisions.ts';
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
  const { flight, encounters, leaps, atom, random, ball } = prepared;
  const isCaught = startAtom(prepared, iChunk, iAtom, ending);
  record?.(atom[0]!, atom[1]!, atom[2]!);
  if (isCaught) return;
  let tMin = END_GAP;
  let sinceBall = 0;
  for (;;) {
    const length = drawFlight(encounters, atom, random);
    if (!staysInBall(ball, atom, length)) {
      // a long flight will leave any ball, so it gets none
      placeBall(ball, prepared.clearance, atom, 4 * length < flight.scene.tank.radius);
      sinceBall = 0;
      if (!(length < ball[RADIUS]!) && endsOn(prepared, tMin, length, ending)) break;
    }
    advance(atom, length);
    tMin = 0;
    if (!attemptCollision(encounters, atom, random)) continue;
    ending.collisions++;
    record?.(atom[0]!, atom[1]!, atom[2]!);
    if (++sinceBall < leaps.forgetting || ball[RADIUS]! < leaps.wanted) continue;
    sinceBall = 0;
    if (!leap(prepared)) continue;
    ending.leaps++;
    record?.(atom[0]!, atom[1]!, atom[2]!);
  }
  advance(atom, flight.distance[0]!);
  record?.(atom[0]!, atom[1]!, atom[2]!);
}

/** Places the atom at its filament and sets it flying; returns whether a shield catches it there and then. */
function startAtom(prepared: PreparedScatter, iChunk: number, iAtom: number, ending: Ending): boolean {
  const { problem, emitters, slots, atom, random, ball } = prepared;
  keyInto(random, problem.seed, iChunk, iAtom);
  ball[RADIUS] = 0;
  ending.collisions = 0;
  ending.leaps = 0;
  ending.emitter = drawEmitter(emitters, random);
  const isCaught = emit(emitters, ending.emitter, atom, random);
  ending.slot = slots.shield;
  ending.place = SHIELD;
  atom[SPEED] = prepared.vapourProbable * drawFluxSpeed(random);
  return isCaught;
}

/** Takes a leap within the ball if there is room for one (see leaps.ts); the ball is then empty. */
function leap({ encounters, leaps, atom, random, ball }: PreparedScatter): boolean {
  const length = ball[RADIUS]! - driftInBall(ball, atom) - leaps.margin;
  if (length < leaps.least) return false;
  drawDirectionInto(atom, DIRECTION, random);
  advance(atom, length);
  thermalise(encounters, atom, random);
  ball[RADIUS] = 0;
  return true;
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
