/** Rays against imported meshes. Stands on three and its ray hierarchy, so it is loaded only where there are meshes. */
import { BufferAttribute, BufferGeometry, DoubleSide, Ray, Vector3 } from 'three';
import { MeshBVH } from 'three-mesh-bvh';
import type { MeshSolid } from './scene.ts';
import type { Triangles } from './stl.ts';

/** Builds the hierarchy over a mesh; takes about a microsecond a triangle. */
export function buildMeshSolid({ position }: Triangles): MeshSolid {
  const geometry = new BufferGeometry();
  geometry.setAttribute('position', new BufferAttribute(position, 3));
  geometry.computeBoundingSphere();
  const hierarchy = new MeshBVH(geometry);
  const ray = new Ray();
  const end = new Vector3();
  const { center, radius } = geometry.boundingSphere ?? { center: end, radius: 0 };
  return {
    bound: [center.x, center.y, center.z, radius],
    firstHit(ox, oy, oz, dx, dy, dz, tMin, tMax) {
      const length = Math.sqrt(dx * dx + dy * dy + dz * dz);
      ray.origin.set(ox, oy, oz);
      ray.direction.set(dx / length, dy / length, dz / length);
      const hit = hierarchy.raycastFirst(ray, DoubleSide, tMin * length, tMax === Infinity ? Infinity : tMax * length);
      return hit ? hit.distance / length : Infinity;
    },
  };
}
