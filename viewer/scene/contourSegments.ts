/** Lines of equal thickness on the mirror. */

/**
 * Segments along which a field, linear in each triangle, has a given value.
 *
 * @param position [3·points] m
 * @param triangles three node indices a triangle
 * @returns [6·segments] ends of each segment, m; single precision, for drawing
 */
export function contourSegments(
  position: Float64Array,
  triangles: Uint32Array,
  field: Float64Array,
  level: number,
): Float32Array {
  const ends: number[] = [];
  for (let t = 0; t < triangles.length; t += 3) {
    const [a, b, c] = [triangles[t]!, triangles[t + 1]!, triangles[t + 2]!];
    // nearly all triangles lie on one side
    const isAbove = field[a]! >= level;
    if (field[b]! >= level === isAbove && field[c]! >= level === isAbove) continue;
    const nodes = [a, b, c] as const;
    for (let k = 0; k < 3; k++) {
      const p = nodes[k as 0]!;
      const q = nodes[((k + 1) % 3) as 0]!;
      const [f, g] = [field[p]! - level, field[q]! - level];
      if (f < 0 === g < 0) continue;
      const share = f / (f - g);
      for (let i = 0; i < 3; i++)
        ends.push(position[3 * p + i]! + share * (position[3 * q + i]! - position[3 * p + i]!));
    }
  }
  return Float32Array.from(ends);
}
