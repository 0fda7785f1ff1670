/** Whether two values of a checked design mean the same. */

/** A quantity written in another unit with twelve digits, the page's own way, is off by up to 5e-12 of itself. */
const REWRITTEN = 1e-11;
/** Below this, numbers lose digits as their exponent runs out (IEEE 754 subnormals start at 2.2e-308). */
const VANISHING = 1e-305;

function isSameNumber(a: number, b: number): boolean {
  const size = Math.max(Math.abs(a), Math.abs(b));
  // a flat mirror's radius is infinite: no share of that is small
  return a === b || (size < Infinity && Math.abs(a - b) <= Math.max(VANISHING, REWRITTEN * size));
}

/** Deep equality, numbers within rounding; a key that is undefined counts as missing. */
export function isSame(a: unknown, b: unknown): boolean {
  if (typeof a === 'number' && typeof b === 'number') return isSameNumber(a, b);
  if (typeof a !== 'object' || typeof b !== 'object' || a === null || b === null) return a === b;
  if (Array.isArray(a) !== Array.isArray(b)) return false;
  const keys = new Set([...Object.keys(a), ...Object.keys(b)]);
  return [...keys].every((key) => isSame((a as Record<string, unknown>)[key], (b as Record<string, unknown>)[key]));
}
