/** Lengths that an edit computes, written in the unit that the file already uses there. */
import { inUnit, parseQuantity } from '../../../engine/index.ts';

/** Nearer than this, two places are the same, m: a thousandth of an atom, ten times the rounding at 8 m. */
const STEP = 1e-13;

/** A length in a unit, rounded to STEP. */
export function lengthText(value: number, unit: string): string {
  const decimals = Math.max(0, Math.ceil(-Math.log10(inUnit(STEP, 'length', unit)) - 1e-9));
  return `${Number(inUnit(value, 'length', unit).toFixed(Math.min(decimals, 100))) || 0} ${unit}`;
}

/** The unit that a length is written in; metres if it is none. */
export function lengthUnit(text: string | undefined): string {
  const parsed = parseQuantity(text, 'length');
  return parsed.ok ? parsed.unit : 'm';
}

/** A written length as metres; 0 if it is none. */
export function metresOf(text: string | undefined): number {
  const parsed = parseQuantity(text, 'length');
  return parsed.ok ? parsed.value : 0;
}

/** A written length made longer; kept as typed if nothing is added. */
export function movedLength(text: string, delta: number): string {
  return delta === 0 ? text : lengthText(metresOf(text) + delta, lengthUnit(text));
}

export type PointText = [string, string, string];
export type Vector = readonly [number, number, number];

/** A written point moved by a vector. */
export function movedPoint(point: PointText, delta: Vector): PointText {
  return [movedLength(point[0], delta[0]), movedLength(point[1], delta[1]), movedLength(point[2], delta[2])];
}

/** A point in a unit. */
export function pointText(point: Vector, unit: string): PointText {
  return [lengthText(point[0], unit), lengthText(point[1], unit), lengthText(point[2], unit)];
}

/** A unit vector for the file, without the dust that rounding leaves in its zeros. */
export function directionNumbers(direction: Vector): [number, number, number] {
  const [x, y, z] = direction.map((v) => Number(v.toFixed(15)) || 0);
  return [x ?? 0, y ?? 0, z ?? 0];
}
