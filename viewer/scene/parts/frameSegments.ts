/** Corner marks around a box: the sign of what is selected. */
import { Vector3, type Box3, type Matrix4 } from 'three';

/** Share of an edge that each corner mark covers. */
const MARK = 0.3;

const CORNERS = [0, 1, 2, 3, 4, 5, 6, 7] as const;

/** Segments of the corner marks of a box in its own frame, placed in the world: pairs of points. */
export function cornerMarks(box: Box3, matrix: Matrix4): number[] {
  const size = box.getSize(new Vector3()).toArray();
  const out: number[] = [];
  for (const corner of CORNERS) {
    const high = [corner & 1, (corner >> 1) & 1, (corner >> 2) & 1] as const;
    const at = box.min.toArray().map((low, k) => low + high[k as 0] * size[k as 0]) as [number, number, number];
    for (let k = 0; k < 3; k++) {
      const to: [number, number, number] = [...at];
      to[k as 0] += (high[k as 0] === 1 ? -MARK : MARK) * size[k as 0];
      out.push(...new Vector3(...at).applyMatrix4(matrix), ...new Vector3(...to).applyMatrix4(matrix));
    }
  }
  return out;
}
