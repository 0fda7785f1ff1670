/** The clear ball about a place: no surface lies in it, so that flights within it need no ray. */
import { clearanceAt, type Clearance } from './clearance.ts';
import { DIRECTION, type Atom } from './collisions.ts';

/** Centre x, y, z and radius, m. */
export type Ball = Float64Array;
export const RADIUS = 3;

/** Room for one ball, empty. */
export function createBall(): Ball {
  return new Float64Array(4);
}

/** Puts the ball about the atom: as large as is clear, or empty. */
export function placeBall(ball: Ball, clearance: Clearance, atom: Atom, isWanted: boolean): void {
  ball[0] = atom[0]!;
  ball[1] = atom[1]!;
  ball[2] = atom[2]!;
  ball[RADIUS] = isWanted ? clearanceAt(clearance, atom[0]!, atom[1]!, atom[2]!) : 0;
}

/** Whether a flight from inside the ball ends inside it too. */
export function staysInBall(ball: Ball, atom: Atom, length: number): boolean {
  const x = atom[0]! + length * atom[DIRECTION]! - ball[0]!;
  const y = atom[1]! + length * atom[DIRECTION + 1]! - ball[1]!;
  const z = atom[2]! + length * atom[DIRECTION + 2]! - ball[2]!;
  return x * x + y * y + z * z < ball[RADIUS]! * ball[RADIUS]!;
}

/** Distance of the atom from the ball's centre, m. */
export function driftInBall(ball: Ball, atom: Atom): number {
  return Math.sqrt((atom[0]! - ball[0]!) ** 2 + (atom[1]! - ball[1]!) ** 2 + (atom[2]! - ball[2]!) ** 2);
}
