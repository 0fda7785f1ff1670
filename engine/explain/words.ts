/** Numbers of an explanation as people say them. */
import type { MirrorShape } from '../geometry/mirrorShape.ts';

/** A thickness with three digits: "69.9 nm", "124 nm". */
export function thick(metres: number): string {
  const value = Math.abs(metres) * 1e9;
  if (value < 0.005) return '0 nm';
  return `${value.toFixed(value >= 99.95 ? 0 : value >= 9.995 ? 1 : 2)} nm`;
}

/** A share in percent without its sign, one decimal below ten: "31 %", "4.2 %". */
export function share(value: number): string {
  const percent = Math.abs(100 * value);
  if (percent < 0.05) return percent === 0 ? '0 %' : 'less than 0.1 %';
  return `${percent.toFixed(percent < 9.95 ? 1 : 0)} %`;
}

/** A limit that somebody set, without needless digits: "10 %". */
export const limit = (value: number): string => `${Number((100 * value).toPrecision(4))} %`;

/** A share with its sign: "+42 %", "−3.1 %". */
export const signed = (value: number): string => `${value < 0 ? '\u2212' : '+'}${share(value)}`;

/** What a factor does: "takes 12 %", "adds 3.1 %". */
export const effect = (value: number): string => `${value < 0 ? 'takes' : 'adds'} ${share(value)}`;

/** An angle in whole degrees. */
export const degrees = (angle: number): string => `${((angle * 180) / Math.PI).toFixed(0)}°`;

/** A mass: "15.3 g", "240 mg". */
export function mass(kilograms: number): string {
  const grams = kilograms * 1e3;
  return grams >= 1 ? `${Number(grams.toPrecision(3))} g` : `${Number((1e3 * grams).toPrecision(3))} mg`;
}

/** A count that may be a mean: "36", "13", "2.4". */
export function count(value: number): string {
  const isWhole = Math.abs(value - Math.round(value)) < 0.05;
  return value.toFixed(isWhole || value >= 9.95 ? 0 : 1);
}

/** "1 filament", "36 filaments". */
export const filaments = (value: number): string => `${value} ${value === 1 ? 'filament' : 'filaments'}`;

/** Lengths in the unit that suits a mirror: metres for a large one, millimetres for a small one. */
export function lengthFor({ rimRadius }: MirrorShape): (metres: number) => string {
  return rimRadius >= 0.3
    ? (metres) => `${metres.toFixed(2)} m`
    : (metres) => `${Number((1e3 * metres).toPrecision(3))} mm`;
}

/** Parts of a sentence as a list: "a, b and c". */
export function listed(parts: readonly string[]): string {
  return parts.length < 2 ? parts.join('') : `${parts.slice(0, -1).join(', ')} and ${parts.at(-1)}`;
}

/** A sentence's first letter in capitals. */
export const started = (text: string): string => text.charAt(0).toUpperCase() + text.slice(1);
