/** How thick a coat must be to count as opaque, and whether a lamp can be seen through it. */
import type { LitFilm } from './reflectanceCurve.ts';

/** What counts as opaque. */
export type OpaqueWhen =
  /** no more than this share of the light enters the glass */
  | { readonly kind: 'transmitted'; readonly limit: number }
  /** the reflectance is within this of a thick coat's, here and at every greater thickness */
  | { readonly kind: 'reflected'; readonly within: number };

export interface OpacityCriterion {
  readonly name: string;
  readonly when: OpaqueWhen;
  readonly source: string;
}

/**
 * Luminance of a frosted incandescent lamp, cd/m².
 *
 * @see IES Lighting Handbook, about 1.2e5 cd/m² for 60 W (from memory, within a factor of two)
 */
const LAMP = 1.2e5;
/**
 * Luminances that bound mesopic vision, cd/m²: above the upper one the eye sees as by day, below the
 * lower one only after long adaptation to the dark.
 *
 * @see CIE 191:2010 (from memory)
 */
const DAYLIGHT_SIGHT = 5;
const DARK_SIGHT = 0.005;

/** Criteria to choose from; the first is the one that reports use. */
export const OPACITY_CRITERIA: readonly OpacityCriterion[] = [
  {
    name: 'a lamp behind the glass is not seen in a lit room',
    when: { kind: 'transmitted', limit: DAYLIGHT_SIGHT / LAMP },
    source: `lamp ${LAMP} cd/m² (IES Lighting Handbook), eye ${DAYLIGHT_SIGHT} cd/m² (CIE 191:2010), both from memory`,
  },
  {
    name: 'a lamp behind the glass is not seen in the dark',
    when: { kind: 'transmitted', limit: DARK_SIGHT / LAMP },
    source: `lamp ${LAMP} cd/m² (IES Lighting Handbook), eye ${DARK_SIGHT} cd/m² (CIE 191:2010), both from memory`,
  },
  {
    name: 'a thousandth of the light goes through',
    when: { kind: 'transmitted', limit: 1e-3 },
    source: 'optical density 3; common practice, no source',
  },
  {
    name: 'the reflectance is within 0.1 % of a thick coat',
    when: { kind: 'reflected', within: 1e-3 },
    source: 'what a reflectometer can tell; common practice, no source',
  },
];

/** No coat of aluminium is thicker than this where light still comes through, m. */
const THICKEST = 2e-6;
const SCAN = 0.5e-9;
const HALVINGS = 40;

/** The thickness where a condition turns true for good, by halving between one that fails and one that holds. */
function turningPoint(fails: number, holds: number, isOpaque: (thickness: number) => boolean): number {
  let [low, high] = [fails, holds];
  for (let i = 0; i < HALVINGS; i++) {
    const middle = (low + high) / 2;
    if (isOpaque(middle)) high = middle;
    else low = middle;
  }
  return high;
}

/**
 * The smallest thickness from which on a coat is opaque.
 *
 * @returns [m], 0 if bare glass meets the criterion, Infinity if nothing up to 2 µm does
 */
export function opaqueThickness(film: LitFilm, when: OpaqueWhen): number {
  const isOpaque = (thickness: number): boolean =>
    when.kind === 'transmitted'
      ? film.transmitted(thickness) <= when.limit
      : Math.abs(film.reflected(thickness) - film.opaqueReflected) <= when.within;
  if (!isOpaque(THICKEST)) return Infinity;
  // Metal fades light ever on, so a transmitted share falls steadily; a reflectance may cross its limit more than once.
  if (when.kind === 'transmitted') return isOpaque(0) ? 0 : turningPoint(0, THICKEST, isOpaque);
  let thickness = 200 * SCAN;
  while (!isOpaque(thickness)) thickness *= 2;
  while (thickness > 0 && isOpaque(thickness - SCAN)) thickness -= SCAN;
  return thickness <= 0 ? 0 : turningPoint(Math.max(0, thickness - SCAN), thickness, isOpaque);
}
