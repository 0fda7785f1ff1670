/** What happens to deposits on their way from a sub-source to a run of points: a shield takes some, gas scatters some. */
import { isShielded, type FilamentSource } from '../emission/filamentSource.ts';
import type { OrientedPoints } from '../geometry/orientedPoints.ts';

/**
 * Moves to `cut` the deposits that the filament's shield keeps from the points; all of them stay where there is none.
 *
 * @param cut [end − begin] overwritten: what the shield took, 0 where it took nothing
 * @param deposits [end − begin] of sub-source j alone, 1/m²; 0 behind the shield afterwards
 */
export function cutByShieldInto(
  cut: Float64Array,
  deposits: Float64Array,
  { position: p }: OrientedPoints,
  begin: number,
  end: number,
  { position: s, shield }: FilamentSource,
  j: number,
): Float64Array {
  cut.fill(0, 0, end - begin);
  if (!shield) return cut;
  for (let i = begin, o = 3 * begin; i < end; i++, o += 3) {
    const dx = p[o]! - s[3 * j]!;
    const dy = p[o + 1]! - s[3 * j + 1]!;
    const dz = p[o + 2]! - s[3 * j + 2]!;
    if (!isShielded(shield, dx, dy, dz, Math.sqrt(dx * dx + dy * dy + dz * dz))) continue;
    cut[i - begin] = deposits[i - begin]!;
    deposits[i - begin] = 0;
  }
  return cut;
}

/**
 * Adds the deposits that reach the points through gas without a collision.
 *
 *     out += deposit · exp(−r/λ)
 *
 * @param out [end − begin] 1/m²; added to, not cleared
 * @param deposits [end − begin] of sub-source j alone in vacuum, 1/m²
 * @param perFreePath 1/λ, 1/m; 0 in vacuum
 * @see S. Dushman, Scientific Foundations of Vacuum Technique (1949), ch. 1 (from memory)
 */
export function addThroughGasInto(
  out: Float64Array,
  deposits: Float64Array,
  { position: p }: OrientedPoints,
  begin: number,
  end: number,
  { position: s }: FilamentSource,
  j: number,
  perFreePath: number,
): Float64Array {
  for (let i = begin, o = 3 * begin; i < end; i++, o += 3) {
    const dx = p[o]! - s[3 * j]!;
    const dy = p[o + 1]! - s[3 * j + 1]!;
    const dz = p[o + 2]! - s[3 * j + 2]!;
    const r = Math.sqrt(dx * dx + dy * dy + dz * dz);
    out[i - begin]! += deposits[i - begin]! * Math.exp(-(r * perFreePath));
  }
  return out;
}
