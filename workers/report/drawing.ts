/** Pieces of inline SVG whose colours come from the page's style sheet, so that they follow its theme. */
import { escaped } from '../picture/svgText.ts';

/** Width of every picture, in units that are pixels on a wide screen; the height is its own. */
export const WIDTH = 400;

export const n = (value: number): string => String(Number(value.toFixed(1)));

export interface Label {
  readonly anchor?: 'start' | 'middle' | 'end';
  /** class names of the style sheet: quiet, strong, halo */
  readonly kind?: string;
  /** degrees, clockwise */
  readonly turn?: number;
}

/** Text at a place. */
export function label(
  x: number,
  y: number,
  text: string,
  { anchor = 'start', kind = '', turn = 0 }: Label = {},
): string {
  const turned = turn === 0 ? '' : ` transform="rotate(${n(turn)} ${n(x)} ${n(y)})"`;
  const at = `x="${n(x)}" y="${n(y)}" text-anchor="${anchor}"${turned}`;
  return `<text ${at}${kind ? ` class="${kind}"` : ''}>${escaped(text)}</text>`;
}

/** A path of a class. */
export const path = (d: string, kind: string): string => `<path class="${kind}" d="${d}"/>`;

/** Straight lines through points. */
export const polyline = (points: readonly (readonly [number, number])[], isClosed = false): string =>
  points.length === 0 ? '' : `M${points.map(([x, y]) => `${n(x)} ${n(y)}`).join('L')}${isClosed ? 'z' : ''}`;

/** A picture with the words that stand for it. */
export function picture(height: number, description: string, body: readonly string[]): string {
  return `<svg viewBox="0 0 ${WIDTH} ${n(height)}" role="img" aria-label="${escaped(description)}">${body.join('')}</svg>`;
}
