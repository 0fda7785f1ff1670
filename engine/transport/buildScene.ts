/** From a plant's data to a scene for rays. */
import { glassOf } from '../geometry/glass.ts';
import type { Triangles } from '../geometry/stl.ts';
import type { MeshSolid, Scene } from '../geometry/scene.ts';
import type { SceneData } from './transport.ts';

/** Builds meshes only where there are some, so that their library is loaded only then. */
async function buildMeshes(meshes: readonly Triangles[]): Promise<MeshSolid[]> {
  if (meshes.length === 0) return [];
  const { buildMeshSolid } = await import('../geometry/mesh.ts');
  return meshes.map(buildMeshSolid);
}

/** The scene of a plant's data, ready for rays. */
export async function buildScene(data: SceneData): Promise<Scene> {
  return { glass: glassOf(data.shape), tank: data.tank, solids: data.solids, meshes: await buildMeshes(data.meshes) };
}
