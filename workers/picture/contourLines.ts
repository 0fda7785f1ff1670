/** Lines of equal value on a raster. */
import { contours } from 'd3-contour';
import type { Raster } from './rasterMap.ts';

export interface ContourLine {
  readonly level: number;
  /** in pixels from the raster's upper left corner; pixel i has its middle at i + ½ */
  readonly points: readonly (readonly [number, number])[];
  readonly isClosed: boolean;
}

/** Shorter lines are specks, pixels. */
const LEAST_LENGTH = 4;

/** Length of a line, in the unit of its points. */
export function lengthOf(points: ContourLine['points']): number {
  let length = 0;
  for (let i = 1; i < points.length; i++)
    length += Math.hypot(points[i]![0] - points[i - 1]![0], points[i]![1] - points[i - 1]![1]);
  return length;
}

/**
 * Point between two neighbouring pixels where the value is `level`, or null if one of them is empty.
 *
 * @param x, y corner of a marching square: one of them is whole, the other half
 */
function crossing({ size, values }: Raster, level: number, x: number, y: number): readonly [number, number] | null {
  const isAcross = Number.isInteger(x);
  const [column, row] = [Math.floor(x), Math.floor(y)];
  const before = isAcross ? size * row + column - 1 : size * (row - 1) + column;
  if ((isAcross ? column : row) < 1 || column >= size || row >= size) return null;
  const [f, g] = [values[before]!, values[isAcross ? before + 1 : before + size]!];
  const share = (level - f) / (g - f);
  if (!Number.isFinite(share)) return null;
  return isAcross ? [x - 0.5 + share, y] : [x, y - 0.5 + share];
}

/** Splits a ring where it runs along empty pixels; those pieces are no contour. */
function piecesOf(ring: readonly (readonly [number, number] | null)[]): ContourLine['points'][] {
  const open = ring.slice(0, -1); // a ring repeats its first corner
  const gap = open.indexOf(null);
  if (gap < 0) return [ring as ContourLine['points']];
  const pieces: (readonly [number, number])[][] = [[]];
  for (const point of [...open.slice(gap), ...open.slice(0, gap)]) {
    if (point) pieces.at(-1)!.push(point);
    else if (pieces.at(-1)!.length > 0) pieces.push([]);
  }
  return pieces;
}

/** Lines along which the raster has each of the levels, by linear interpolation between pixels. */
export function contourLines(raster: Raster, levels: readonly number[]): ContourLine[] {
  const { size } = raster;
  const values = Array.from(raster.values);
  const march = contours().size([size, size]).smooth(false);
  return levels.flatMap((level) =>
    march
      .contour(values, level)
      .coordinates.flat()
      .flatMap((ring) => piecesOf(ring.map(([x = 0, y = 0]) => crossing(raster, level, x, y))))
      .filter((points) => lengthOf(points) >= LEAST_LENGTH)
      .map((points) => {
        const [first, last] = [points[0]!, points.at(-1)!];
        return { level, points, isClosed: first[0] === last[0] && first[1] === last[1] };
      }),
  );
}
