/** How large the triangles of an STL file come out. */
import { readStl } from '../../../engine/geometry/stl.ts';
import type { MeshUnit } from '../../state/edits/addPart.ts';

const METRES_PER: Readonly<Record<MeshUnit, number>> = { m: 1, cm: 0.01, mm: 0.001, in: 0.0254 };

export type MeshExtent =
  | { readonly ok: true; readonly triangles: number; /** m, along x, y and z */ readonly size: readonly number[] }
  | { readonly ok: false; readonly reason: string };

/** Triangles and size of an STL file whose numbers are in a unit. */
export function meshExtent(bytes: Uint8Array<ArrayBuffer>, unit: MeshUnit): MeshExtent {
  try {
    const { position } = readStl(bytes, { scale: METRES_PER[unit], position: [0, 0, 0], rotation: undefined });
    const [low, high] = [
      [Infinity, Infinity, Infinity],
      [-Infinity, -Infinity, -Infinity],
    ] as [number[], number[]];
    position.forEach((value, i) => {
      low[i % 3] = Math.min(low[i % 3] ?? 0, value);
      high[i % 3] = Math.max(high[i % 3] ?? 0, value);
    });
    return { ok: true, triangles: position.length / 9, size: high.map((top, k) => top - (low[k] ?? 0)) };
  } catch (error) {
    return { ok: false, reason: error instanceof Error ? error.message : String(error) };
  }
}
