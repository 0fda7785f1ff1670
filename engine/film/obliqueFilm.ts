/** What vapour that arrives at a slant does to a film: leaning columns with gaps between them. */

/**
 * How far the columns of a film lean from the normal.
 *
 *     tan α = 2 tan β
 *
 * Found on evaporated aluminium; holds up to about 60°, beyond it the columns lean less than this.
 *
 * @param arrival [rad] angle α of the vapour from the normal, 0 ≤ α < π/2
 * @returns [rad] angle β of the columns
 * @see J. M. Nieuwenhuizen, H. B. Haanstra, Philips Tech. Rev. 27 (1966) 87
 */
export function columnTilt(arrival: number): number {
  return Math.atan(Math.tan(arrival) / 2);
}

/**
 * Density of a film of atoms that stay where they hit, against one that grew head-on: the least that
 * shadowing alone allows. Aluminium near room temperature moves and fills gaps, so real coats are denser.
 *
 *     ρ/ρ₀ = 2 cos α / (1 + cos α)
 *
 * @param cosArrive [1]
 * @see R. N. Tait, T. Smy, M. J. Brett, Thin Solid Films 226 (1993) 196 (from memory)
 */
export function leastDensity(cosArrive: number): number {
  return (2 * cosArrive) / (1 + cosArrive);
}

/** What to expect of the film at a place. */
export const DENSE = 0;
export const WATCH = 1;
export const POROUS = 2;
export type FilmGrade = typeof DENSE | typeof WATCH | typeof POROUS;

/** Mean angles of arrival from which on a film needs watching, and from which on it is expected to be porous, rad. */
export const WATCH_ANGLE = (45 * Math.PI) / 180;
export const POROUS_ANGLE = (60 * Math.PI) / 180;
/** Share of the deposit beyond 60° that makes a film as doubtful as a mean angle there. */
export const POROUS_SHARE = 0.5;

/**
 * Grades a place by how its vapour arrives.
 *
 * Up to 45° no loss is reported; between 45° and 60° films begin to lose reflectance in the
 * ultraviolet; beyond about 60° shadowing opens gaps, and at 80° aluminium turns diffuse before it is opaque.
 *
 * @param meanAngle [rad] mean angle of arrival from the normal
 * @param grazingShare [1] share of the deposit that arrives beyond 60°
 * @see G. Hass, Physics of Thin Films 2 (1964) and L. Holland, Vacuum Deposition of Thin Films (1956), both from
 * memory; the 80° film: abstract of a study of obliquely evaporated aluminium, scilit 20100b0f
 */
export function filmGrade(meanAngle: number, grazingShare: number): FilmGrade {
  if (meanAngle >= POROUS_ANGLE || grazingShare >= POROUS_SHARE) return POROUS;
  return meanAngle >= WATCH_ANGLE ? WATCH : DENSE;
}
