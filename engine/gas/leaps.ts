/**
 * Leaps over long diffusion: what makes 1 mbar, with a hundred million collisions an atom, computable.
 *
 * Let f be the chance that an atom at a place, with a thermal velocity in any direction, ends on a given
 * tally. A few free paths away from every surface f is harmonic (the Knudsen layers die out as e^(−d/λ)),
 * so that it equals its mean over any sphere about the place: an atom may be set down anywhere on such a
 * sphere with a fresh thermal velocity. Three things make this exact but for terms of e^(−MARGIN) and e^(−FORGET):
 *
 *   – the sphere keeps MARGIN free paths from every surface;
 *   – before it leaps, the atom makes so many collisions in the clear that it has forgotten the velocity
 *     with which it came; what it then drifts is isotropic about the place where it began to forget, and
 *     an isotropic drift leaves the mean of a harmonic function alone;
 *   – after it, the atom goes on colliding one by one, so that it meets every surface by real flights.
 *
 * @see M. E. Muller, Some continuous Monte Carlo methods for the Dirichlet problem, Ann. Math. Stat. 27 (1956) 569
 */
import type { Encounters } from './collisions.ts';
import { relativeSpeed } from './freePath.ts';

/** Free paths that a leap keeps from every surface. */
const MARGIN = 10;
/** e-folds by which the velocity is forgotten before a leap. */
const FORGET = 7;
/** Shortest leap, in free paths: below it colliding costs less. */
const LEAST = 10;

/** When and how far to leap in a gas. */
export interface Leaps {
  /** collisions in which an atom forgets its velocity */
  readonly forgetting: number;
  /** clearance from which an atom begins to forget, m; Infinity for no leaps */
  readonly wanted: number;
  /** m, kept from every surface */
  readonly margin: number;
  /** m, shortest leap */
  readonly least: number;
}

/**
 * Leaps for a gas.
 *
 * A collision leaves on average at most m_Al/(m_Al + m_gas) of the atom's velocity. While it forgets, the
 * atom drifts by √(6 D t) ≈ 1.3 √collisions free paths (D of the first Chapman–Enskog approximation); more
 * than twice that is allowed for.
 */
export function leapsOf(encounters: Encounters, allowed: boolean): Leaps {
  const { count, perPath, probable, massShare, perPathTotal, atomProbable } = encounters;
  const path = 1 / perPathTotal;
  if (!allowed || count === 0 || !(path < Infinity)) return { forgetting: 0, wanted: Infinity, margin: 0, least: 0 };
  let rate = 0;
  let kept = 0;
  for (let j = 0; j < count; j++) {
    const one = perPath[j]! * probable[j]! * relativeSpeed(atomProbable / probable[j]!);
    rate += one;
    kept += one * (1 - massShare[j]!);
  }
  const forgetting = Math.ceil(-FORGET / Math.log(kept / rate));
  const wanted = (MARGIN + LEAST + 3 * Math.sqrt(forgetting)) * path;
  return { forgetting, wanted, margin: MARGIN * path, least: LEAST * path };
}
