/** Pressures to lay the same shot at. */
import { parseQuantity } from '../design/quantity.ts';

/** Pressures evenly spaced in their logarithm, both ends included, Pa. */
export function logSpaced(from: number, to: number, count: number): Float64Array {
  if (!(from > 0 && to > 0 && Number.isInteger(count) && count >= 1))
    throw new RangeError(`expected two pressures above 0 and a whole number of them; found ${from}, ${to}, ${count}`);
  const ratio = to / from;
  return Float64Array.from({ length: count }, (_, i) =>
    i === count - 1 && count > 1 ? to : from * ratio ** (i / Math.max(1, count - 1)),
  );
}

export type ReadSweep =
  { readonly ok: true; readonly pressures: Float64Array } | { readonly ok: false; readonly message: string };

/** Most pressures of a sweep. */
const MOST = 200;

/** Reads a sweep such as "1e-6 mbar : 1 mbar : 13": from, to, how many, evenly spaced in the logarithm. */
export function readPressureSweep(text: string): ReadSweep {
  const parts = text.split(':').map((part) => part.trim());
  const bad = (message: string): ReadSweep => ({ ok: false, message });
  if (parts.length !== 3)
    return bad(`expected from : to : how many, such as "1e-6 mbar : 1 mbar : 13"; found "${text}"`);
  const [from, to] = [parseQuantity(parts[0], 'pressure'), parseQuantity(parts[1], 'pressure')];
  if (!from.ok) return bad(from.message);
  if (!to.ok) return bad(to.message);
  const count = Number(parts[2]);
  if (!(from.value > 0 && to.value > 0))
    return bad('expected pressures above zero; their logarithms are spaced evenly');
  if (!(/^\d+$/.test(parts[2]!) && count >= 1 && count <= MOST))
    return bad(`expected a whole number of pressures from 1 to ${MOST}; found "${parts[2]}"`);
  return { ok: true, pressures: logSpaced(from.value, to.value, count) };
}
