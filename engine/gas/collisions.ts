/**
 * Collisions of an aluminium atom with the molecules of a thermal gas, drawn exactly.
 *
 * The atom's true rate of collisions, ν(v) = n σ ⟨|v − u|⟩, is never above n σ (v + ū): so attempts are made
 * at that rate, each with a partner of speed u drawn in proportion to (v + u) times the Maxwell distribution,
 * and an attempt becomes a collision with probability |v − u|/(v + u). Free flights and partners then follow
 * their exact laws, at any speed and in any mixture, without a table.
 *
 * @see S. L. Lin, J. N. Bardsley, J. Chem. Phys. 66 (1977) 435, for null collisions (from memory)
 */
import { ALUMINIUM_MASS } from './constants.ts';
import { drawDirectionInto, drawFluxSpeed, drawMaxwellSpeed } from './draw.ts';
import { atomCrossSection, type VapourModel } from './freePath.ts';
import { componentsOf, type GasState } from './gases.ts';
import { uniform, type Random } from './random.ts';
import { meanSpeed, probableSpeed } from './speeds.ts';

/** A gas as a flying atom meets it; component j owns slot j. */
export interface Encounters {
  readonly count: number;
  /** [count] n σ, 1/m */
  readonly perPath: Float64Array;
  /** [count] m/s */
  readonly probable: Float64Array;
  /** [count] m/s */
  readonly mean: Float64Array;
  /** [count] mass of the molecule over the mass of both, 1 */
  readonly massShare: Float64Array;
  /** Σ n σ, 1/m */
  readonly perPathTotal: number;
  /** Σ n σ ū, 1/s */
  readonly rateAtRest: number;
  /** most probable speed of aluminium atoms at the gas's temperature, m/s */
  readonly atomProbable: number;
}

/** Prepares a gas for flights through it. */
export function encountersOf(gas: GasState, model: VapourModel): Encounters {
  const parts = componentsOf(gas);
  const of = (value: (part: (typeof parts)[number]) => number): Float64Array => Float64Array.from(parts, value);
  const perPath = of((part) => part.density * atomCrossSection(part, model));
  const mean = of(({ mass }) => meanSpeed(gas.temperature, mass));
  return {
    count: parts.length,
    perPath,
    probable: of(({ mass }) => probableSpeed(gas.temperature, mass)),
    mean,
    massShare: of(({ mass }) => mass / (mass + ALUMINIUM_MASS)),
    perPathTotal: perPath.reduce((sum, value) => sum + value, 0),
    rateAtRest: perPath.reduce((sum, value, j) => sum + value * mean[j]!, 0),
    atomProbable: probableSpeed(gas.temperature, ALUMINIUM_MASS),
  };
}

/**
 * A flying atom in eleven slots: place x, y, z (m); unit direction; speed (m/s); scratch of four.
 */
export type Atom = Float64Array;
export const ATOM_SLOTS = 11;
export const DIRECTION = 3;
export const SPEED = 6;
const PARTNER = 7;

/** Room for one atom. */
export function createAtom(): Atom {
  return new Float64Array(ATOM_SLOTS);
}

/** Moves the atom along its direction. */
export function advance(atom: Atom, length: number): void {
  atom[0]! += length * atom[DIRECTION]!;
  atom[1]! += length * atom[DIRECTION + 1]!;
  atom[2]! += length * atom[DIRECTION + 2]!;
}

/** Distance to the next attempt at a collision, m; Infinity in a perfect vacuum. */
export function drawFlight({ perPathTotal, rateAtRest }: Encounters, atom: Atom, random: Random): number {
  const speed = atom[SPEED]!;
  return (-Math.log(uniform(random)) * speed) / (perPathTotal * speed + rateAtRest);
}

/** The component that an attempt is made with, in proportion to n σ (v + ū). */
function drawComponent(
  { count, perPath, mean, perPathTotal, rateAtRest }: Encounters,
  speed: number,
  random: Random,
): number {
  if (count === 1) return 0;
  let left = uniform(random) * (perPathTotal * speed + rateAtRest);
  for (let j = 0; j < count - 1; j++) {
    left -= perPath[j]! * (speed + mean[j]!);
    if (left < 0) return j;
  }
  return count - 1;
}

/**
 * One attempt at a collision: draws the partner and, if the two meet, turns the atom by an elastic
 * collision of hard spheres, which is isotropic in the centre-of-mass frame.
 *
 * @returns whether they met; if not, the atom is unchanged
 */
export function attemptCollision(encounters: Encounters, atom: Atom, random: Random): boolean {
  const v = atom[SPEED]!;
  const j = drawComponent(encounters, v, random);
  const mean = encounters.mean[j]!;
  const x = uniform(random) * (v + mean) < v ? drawMaxwellSpeed(random) : drawFluxSpeed(random);
  const u = x * encounters.probable[j]!;
  drawDirectionInto(atom, PARTNER, random);
  const wx = v * atom[DIRECTION]! - u * atom[PARTNER]!;
  const wy = v * atom[DIRECTION + 1]! - u * atom[PARTNER + 1]!;
  const wz = v * atom[DIRECTION + 2]! - u * atom[PARTNER + 2]!;
  const relative = Math.sqrt(wx * wx + wy * wy + wz * wz);
  if (uniform(random) * (v + u) >= relative) return false;
  const share = encounters.massShare[j]!;
  // velocity of the centre of mass: the atom's, less the molecule's share of the relative velocity
  const cx = v * atom[DIRECTION]! - share * wx;
  const cy = v * atom[DIRECTION + 1]! - share * wy;
  const cz = v * atom[DIRECTION + 2]! - share * wz;
  drawDirectionInto(atom, PARTNER, random);
  const after = share * relative;
  setVelocity(atom, cx + after * atom[PARTNER]!, cy + after * atom[PARTNER + 1]!, cz + after * atom[PARTNER + 2]!);
  return true;
}

function setVelocity(atom: Atom, vx: number, vy: number, vz: number): void {
  const speed = Math.sqrt(vx * vx + vy * vy + vz * vz);
  atom[DIRECTION] = vx / speed;
  atom[DIRECTION + 1] = vy / speed;
  atom[DIRECTION + 2] = vz / speed;
  atom[SPEED] = speed;
}

/** Gives the atom a velocity of the gas's own temperature in a direction drawn evenly. */
export function thermalise({ atomProbable }: Encounters, atom: Atom, random: Random): void {
  drawDirectionInto(atom, DIRECTION, random);
  atom[SPEED] = atomProbable * drawMaxwellSpeed(random);
}
