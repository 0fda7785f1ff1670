/** The body of the glass behind the coated face, for drawing. */
import { BufferGeometry, Float32BufferAttribute } from 'three';
import { backHeight, outlineRadius, sag, type MirrorShape } from '../../engine/geometry/mirrorShape.ts';

const AROUND = 192;

/** Edge, hole wall and back of the glass; the face itself is drawn by the coat. */
export function glassGeometry(shape: MirrorShape): BufferGeometry {
  const position: number[] = [];
  const index: number[] = [];
  const back = backHeight(shape);
  for (let a = 0; a <= AROUND; a++) {
    const angle = (2 * Math.PI * a) / AROUND;
    for (const radius of [outlineRadius(shape, angle), shape.holeRadius]) {
      const [x, y] = [shape.centerX + radius * Math.cos(angle), radius * Math.sin(angle)];
      position.push(x, y, sag(shape, Math.hypot(x, y)), x, y, back);
    }
  }
  for (let a = 0; a < AROUND; a++) {
    const [rim, rimBack, hole, holeBack] = [4 * a, 4 * a + 1, 4 * a + 2, 4 * a + 3];
    quad(index, rim, rimBack);
    quad(index, holeBack, hole);
    quad(index, rimBack, holeBack);
  }
  const geometry = new BufferGeometry();
  geometry.setAttribute('position', new Float32BufferAttribute(position, 3));
  geometry.setIndex(index);
  const unshared = geometry.toNonIndexed();
  unshared.computeVertexNormals();
  geometry.dispose();
  return unshared;
}

/** Two triangles between an edge and the same edge one step further around. */
function quad(index: number[], p: number, q: number): void {
  index.push(p, q, q + 4, p, q + 4, p + 4);
}

/** A circle on the face, or on its continuation, as the corners of a line. */
export function circleOnFace(shape: MirrorShape, radius: number, lift: number): Float32Array {
  const position: number[] = [];
  for (let a = 0; a <= AROUND; a++) {
    const angle = (2 * Math.PI * a) / AROUND;
    const r = Math.min(radius, outlineRadius(shape, angle));
    const [x, y] = [shape.centerX + r * Math.cos(angle), r * Math.sin(angle)];
    position.push(x, y, sag(shape, Math.hypot(x, y)) + lift);
  }
  return Float32Array.from(position);
}
