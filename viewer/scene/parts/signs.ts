/** Many copies of one small sign, each at its place, in buffers that grow when they must. */
import { Color, InstancedMesh, Matrix4, MeshBasicMaterial, type BufferGeometry } from 'three';

export interface Sign {
  readonly matrix: Matrix4;
  readonly color: string;
}

export interface Signs {
  /** the mesh in use; another one after it has grown */
  readonly mesh: () => InstancedMesh;
  readonly draw: (signs: readonly Sign[]) => void;
  readonly dispose: () => void;
}

/** Copies that a new buffer holds beyond those asked for. */
const SPARE = 16;

/**
 * @param onGrow called with the old and the new mesh when the buffer has grown
 */
export function createSigns(
  geometry: BufferGeometry,
  onGrow: (old: InstancedMesh, next: InstancedMesh) => void,
): Signs {
  const material = new MeshBasicMaterial({ toneMapped: false });
  const roomFor = (count: number): InstancedMesh => {
    const made = new InstancedMesh(geometry, material, count);
    made.frustumCulled = false;
    return made;
  };
  let mesh = roomFor(SPARE);
  const color = new Color();
  return {
    mesh: () => mesh,
    draw: (signs) => {
      if (signs.length > mesh.instanceMatrix.count) {
        const old = mesh;
        mesh = roomFor(signs.length + SPARE);
        onGrow(old, mesh);
        old.dispose();
      }
      signs.forEach((sign, i) => {
        mesh.setMatrixAt(i, sign.matrix);
        mesh.setColorAt(i, color.set(sign.color));
      });
      mesh.count = signs.length;
      mesh.instanceMatrix.needsUpdate = true;
      if (mesh.instanceColor) mesh.instanceColor.needsUpdate = true;
    },
    dispose: () => {
      mesh.dispose();
      geometry.dispose();
      material.dispose();
    },
  };
}
