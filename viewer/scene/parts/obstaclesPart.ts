/** The solid things in the tank; a moved one only gets another place, a changed one another shape. */
import { DoubleSide, Group, Matrix4, Mesh, MeshLambertMaterial, type BufferGeometry } from 'three';
import type { DesignFile, Plant } from '../../../engine/index.ts';
import type { Colors } from '../../state/useColors.ts';
import { obstacleOrder } from '../obstacleOrder.ts';
import { meshGeometry, localSolid, placeOfSolid } from '../solidGeometry.ts';
import { whenChanged } from '../whenChanged.ts';
import type { ScenePart } from './scenePart.ts';

/** A thing to draw: its shape, told by a key, and where it is. */
interface Body {
  readonly key: string;
  readonly geometry: () => BufferGeometry;
  readonly matrix: Matrix4;
}

const HERE = new Matrix4();
/** Tells meshes apart: each edit reads them anew. */
function meshKey(position: Float32Array): string {
  let [sum, weighted] = [0, 0];
  for (let i = 0; i < position.length; i++) {
    sum += position[i]!;
    weighted += position[i]! * ((i % 97) + 1);
  }
  return `mesh ${position.length} ${sum} ${weighted}`;
}

function bodiesOf({ solids, meshes }: Plant): Body[] {
  const closed = Array.from({ length: solids.count }, (_, i) => {
    return { ...localSolid(solids, i), matrix: placeOfSolid(solids, i) };
  });
  const meshed = meshes.map((triangles) => ({
    key: meshKey(triangles.position),
    geometry: () => meshGeometry(triangles),
    matrix: HERE,
  }));
  return [...closed, ...meshed];
}

export function createObstaclesPart(): ScenePart {
  const object = new Group();
  object.name = 'obstacles';
  const material = new MeshLambertMaterial({ side: DoubleSide, transparent: true, opacity: 0.92 });
  const drop = (mesh: Mesh): void => {
    mesh.geometry.dispose();
    object.remove(mesh);
  };
  const show = (mesh: Mesh | undefined, { key, geometry, matrix }: Body): Mesh => {
    const shown = mesh ?? new Mesh(undefined, material);
    if (shown.userData['key'] !== key) {
      shown.geometry.dispose();
      shown.geometry = geometry();
      shown.userData['key'] = key;
    }
    shown.matrixAutoUpdate = false;
    shown.matrix.copy(matrix);
    shown.matrixWorldNeedsUpdate = true;
    return shown;
  };
  const redraw = whenChanged((plant: Plant, file: DesignFile, colors: Colors) => {
    material.color.set(colors['scene-solid']);
    const order = obstacleOrder(file);
    const meshes = object.children as Mesh[];
    const bodies = bodiesOf(plant);
    for (const mesh of meshes.slice(bodies.length)) drop(mesh);
    bodies.forEach((body, i) => {
      const mesh = show(meshes[i], body);
      mesh.name = plant.obstacleNames[i] ?? '';
      mesh.userData['index'] = order[i];
      if (!mesh.parent) object.add(mesh);
    });
  });
  return {
    object,
    update: ({ plant, file, colors }) => redraw(plant, file, colors),
    dispose: () => {
      for (const mesh of [...object.children] as Mesh[]) drop(mesh);
      material.dispose();
    },
  };
}
