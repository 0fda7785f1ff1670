/** The steps in which dragged values move, and how they are read out. */
import { fixed } from '../format/numbers.ts';
import { shownQuantity, type Units } from '../state/units.ts';

/** Which steps the held keys ask for: none, Alt, Ctrl. */
export type Fineness = 'coarse' | 'fine' | 'free';

const INCH = 0.0254;
const DEGREE = Math.PI / 180;
const LENGTH_STEPS = {
  metric: { coarse: 0.01, fine: 0.001, free: 1e-4 },
  inches: { coarse: 0.5 * INCH, fine: 0.05 * INCH, free: 0.001 * INCH },
} as const;
const ANGLE_STEPS = { coarse: DEGREE, fine: 0.1 * DEGREE, free: 0.01 * DEGREE } as const;

export type HandleKind = 'length' | 'angle';

/** The step of a value, m or rad; "free" still keeps to numbers that people can write. */
export function stepOf(kind: HandleKind, fineness: Fineness, { length }: Units): number {
  if (kind === 'angle') return ANGLE_STEPS[fineness];
  return LENGTH_STEPS[length === 'in' || length === 'ft' ? 'inches' : 'metric'][fineness];
}

/** The multiple of a step that is nearest to a value. */
export function snapped(value: number, step: number): number {
  return Math.round(value / step) * step;
}

/** Fineness from the keys held with a pointer event. */
export function finenessOf({ altKey, ctrlKey }: { readonly altKey: boolean; readonly ctrlKey: boolean }): Fineness {
  return ctrlKey ? 'free' : altKey ? 'fine' : 'coarse';
}

/** A value in the user's unit, "2.9 m" or "90°". */
export function readOut(value: number, kind: HandleKind, units: Units): string {
  if (kind === 'angle') return `${Number(fixed(value / DEGREE, 2).replace('\u2212', '-'))}°`.replace('-', '\u2212');
  return shownQuantity(units, 'length', Number(value.toFixed(9)), 6).replace('-', '\u2212');
}
