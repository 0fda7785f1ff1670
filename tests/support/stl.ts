/** STL files of a box about the origin, for tests of imported meshes. */

/** The twelve triangles of a box, three corners each. */
function boxTriangles(size: readonly number[]): number[][][] {
  const corner = (k: number): number[] => size.map((side, axis) => (((k >> axis) & 1) - 0.5) * side);
  return [
    [0, 2, 3, 1],
    [4, 5, 7, 6],
    [0, 1, 5, 4],
    [2, 6, 7, 3],
    [0, 4, 6, 2],
    [1, 3, 7, 5],
  ].flatMap((quad) => {
    const [a, b, c, d] = quad.map(corner) as [number[], number[], number[], number[]];
    return [
      [a, b, c],
      [a, c, d],
    ];
  });
}

/** A binary STL: 80 bytes of heading, a count, then 50 bytes a triangle. */
export function cubeStl(size: readonly number[]): Uint8Array<ArrayBuffer> {
  const triangles = boxTriangles(size);
  const bytes = new Uint8Array(84 + 50 * triangles.length);
  const view = new DataView(bytes.buffer);
  view.setUint32(80, triangles.length, true);
  triangles.forEach((corners, t) => {
    corners.flat().forEach((value, k) => view.setFloat32(84 + 50 * t + 12 + 4 * k, value, true));
  });
  return bytes;
}

/** The same as text. */
export function textStl(size: readonly number[]): Uint8Array<ArrayBuffer> {
  const facets = boxTriangles(size).map(
    (corners) =>
      `facet normal 0 0 0\nouter loop\n${corners.map((corner) => `vertex ${corner.join(' ')}`).join('\n')}\nendloop\nendfacet`,
  );
  return new TextEncoder().encode(`solid box\n${facets.join('\n')}\nendsolid box\n`);
}

/** Bytes as base64 text. */
export const base64 = (bytes: Uint8Array): string => Buffer.from(bytes).toString('base64');
