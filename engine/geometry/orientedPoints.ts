/** Oriented points as parallel arrays. Point i owns slots 3i, 3i+1, 3i+2 of the vector arrays. */
export interface OrientedPoints {
  readonly count: number;
  /** [3·count] x, y, z per point, m */
  readonly position: Float64Array;
  /** [3·count] unit normals; they point into the tank */
  readonly normal: Float64Array;
}

/** Makes room for `count` oriented points, all zero. */
export function createOrientedPoints(count: number): OrientedPoints {
  return { count, position: new Float64Array(3 * count), normal: new Float64Array(3 * count) };
}

/** Several sets of points as one, in order. */
export function joinOrientedPoints(sets: readonly OrientedPoints[]): OrientedPoints {
  const joined = createOrientedPoints(sets.reduce((sum, { count }) => sum + count, 0));
  let o = 0;
  for (const { count, position, normal } of sets) {
    joined.position.set(position, o);
    joined.normal.set(normal, o);
    o += 3 * count;
  }
  return joined;
}
