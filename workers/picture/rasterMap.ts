/** A map of the face as pixels, seen face-on. */
import { faceTriangles, type Face } from '../../engine/geometry/face.ts';

export interface Raster {
  /** pixels a side */
  readonly size: number;
  /** [size²] value, NaN off the glass; row 0 is the largest y */
  readonly values: Float64Array;
}

/** Slack of a pixel on the edge of a triangle, in shares of its sides: no pixel between two triangles is lost. */
const SLACK = 1e-9;

/** Draws a field by linear interpolation in each triangle of the face. `reach` is half the picture's side, m. */
export function rasterMap(face: Face, field: Float64Array, reach: number, size: number): Raster {
  const values = new Float64Array(size * size).fill(NaN);
  const triangles = faceTriangles(face.cells);
  const { position } = face.points;
  const perMetre = size / (2 * reach);
  const left = face.grid.shape.centerX - reach;
  const corners = new Float64Array(9);
  for (let t = 0; t < triangles.length; t += 3) {
    for (let k = 0; k < 3; k++) {
      const node = triangles[t + k]!;
      corners[3 * k] = (position[3 * node]! - left) * perMetre - 0.5;
      corners[3 * k + 1] = (reach - position[3 * node + 1]!) * perMetre - 0.5;
      corners[3 * k + 2] = field[node]!;
    }
    fillTriangleInto(values, size, corners);
  }
  return { size, values };
}

/** Overwrites the pixels of one triangle; `corners` holds column, row and value of each. */
function fillTriangleInto(values: Float64Array, size: number, corners: Float64Array): void {
  const [c0, r0, f0, c1, r1, f1, c2, r2, f2] = corners as unknown as [
    ...[number, number, number],
    ...[number, number, number],
    ...[number, number, number],
  ];
  const area = (c1 - c0) * (r2 - r0) - (c2 - c0) * (r1 - r0);
  if (area === 0) return;
  const firstRow = Math.max(0, Math.ceil(Math.min(r0, r1, r2)));
  const lastRow = Math.min(size - 1, Math.floor(Math.max(r0, r1, r2)));
  const firstColumn = Math.max(0, Math.ceil(Math.min(c0, c1, c2)));
  const lastColumn = Math.min(size - 1, Math.floor(Math.max(c0, c1, c2)));
  for (let row = firstRow; row <= lastRow; row++) {
    for (let column = firstColumn; column <= lastColumn; column++) {
      const u = ((column - c0) * (r2 - r0) - (c2 - c0) * (row - r0)) / area;
      const v = ((c1 - c0) * (row - r0) - (column - c0) * (r1 - r0)) / area;
      if (u < -SLACK || v < -SLACK || u + v > 1 + SLACK) continue;
      values[size * row + column] = f0 + u * (f1 - f0) + v * (f2 - f0);
    }
  }
}

/**
 * A raster grown outwards, so that a picture cut to the glass's outline has no ragged edge: each
 * empty pixel beside filled ones takes their mean.
 *
 * @param steps pixels to grow by
 * @param mayGrow whether an empty pixel may be filled
 */
export function grownRaster({ size, values }: Raster, steps: number, mayGrow: (i: number) => boolean): Raster {
  let current = values;
  for (let step = 0; step < steps; step++) {
    const next = Float64Array.from(current);
    for (let i = 0; i < next.length; i++)
      if (Number.isNaN(current[i]) && mayGrow(i)) next[i] = meanBeside(current, size, i);
    current = next;
  }
  return { size, values: current };
}

/** Mean of the filled pixels around pixel i; NaN if there is none. */
function meanBeside(values: Float64Array, size: number, i: number): number {
  const [row, column] = [Math.floor(i / size), i % size];
  let [sum, count] = [0, 0];
  for (let r = Math.max(0, row - 1); r <= Math.min(size - 1, row + 1); r++) {
    for (let c = Math.max(0, column - 1); c <= Math.min(size - 1, column + 1); c++) {
      const value = values[size * r + c]!;
      if (Number.isNaN(value)) continue;
      sum += value;
      count++;
    }
  }
  return count > 0 ? sum / count : NaN;
}
