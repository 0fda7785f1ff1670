/** A map of the face as pixels, seen face-on. */
import { interpolateViridis } from 'd3-scale-chromatic';
import { faceTriangles, type Face } from '../../engine/geometry/face.ts';

export interface Raster {
  /** pixels a side */
  readonly size: number;
  /** [size²] value, NaN off the glass; row 0 is the largest y */
  readonly values: Float64Array;
}

/** Draws a field by linear interpolation in each triangle of the face. `reach` is half the picture's side, m. */
export function rasterMap(face: Face, field: Float64Array, reach: number, size: number): Raster {
  const values = new Float64Array(size * size).fill(NaN);
  const triangles = faceTriangles(face.cells);
  const p = face.points.position;
  const toColumn = (x: number): number => ((x - face.grid.shape.centerX + reach) / (2 * reach)) * size - 0.5;
  const toRow = (y: number): number => ((reach - y) / (2 * reach)) * size - 0.5;
  for (let t = 0; t < triangles.length; t += 3) {
    const nodes = [triangles[t]!, triangles[t + 1]!, triangles[t + 2]!] as const;
    const columns = nodes.map((node) => toColumn(p[3 * node]!)) as [number, number, number];
    const rows = nodes.map((node) => toRow(p[3 * node + 1]!)) as [number, number, number];
    fillTriangle(values, size, columns, rows, nodes.map((node) => field[node]!) as [number, number, number]);
  }
  return { size, values };
}

type Three = readonly [number, number, number];

function fillTriangle(values: Float64Array, size: number, c: Three, r: Three, f: Three): void {
  const area = (c[1] - c[0]) * (r[2] - r[0]) - (c[2] - c[0]) * (r[1] - r[0]);
  if (area === 0) return;
  const slack = 1e-9;
  for (let row = Math.max(0, Math.ceil(Math.min(...r))); row <= Math.min(size - 1, Math.floor(Math.max(...r))); row++) {
    for (
      let column = Math.max(0, Math.ceil(Math.min(...c)));
      column <= Math.min(size - 1, Math.floor(Math.max(...c)));
      column++
    ) {
      const u = ((column - c[0]) * (r[2] - r[0]) - (c[2] - c[0]) * (row - r[0])) / area;
      const v = ((c[1] - c[0]) * (row - r[0]) - (column - c[0]) * (r[1] - r[0])) / area;
      if (u < -slack || v < -slack || u + v > 1 + slack) continue;
      values[size * row + column] = f[0] + u * (f[1] - f[0]) + v * (f[2] - f[0]);
    }
  }
}

/** RGBA bytes of a raster; off the glass it is transparent. */
export function colourRaster({ values }: Raster, low: number, high: number): Uint8Array {
  const table = Array.from({ length: 256 }, (_, i) =>
    (interpolateViridis(i / 255).match(/[0-9a-f]{2}/gi) ?? []).map((hex) => Number.parseInt(hex, 16)),
  );
  const bytes = new Uint8Array(4 * values.length);
  values.forEach((value, i) => {
    if (Number.isNaN(value)) return;
    const share = high > low ? (value - low) / (high - low) : 0.5;
    bytes.set([...(table[Math.round(255 * Math.min(1, Math.max(0, share)))] ?? [0, 0, 0]), 255], 4 * i);
  });
  return bytes;
}
