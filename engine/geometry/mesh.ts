/** Rays against imported meshes. Stands on three and its ray hierarchy, so it is loaded only where there are meshes. */
import { Box3, BufferAttribute, BufferGeometry, DoubleSide, Ray, Vector3 } from 'three';
import { INTERSECTED, MeshBVH, NOT_INTERSECTED } from 'three-mesh-bvh';
import { CLEAR, CLEARANCE, standingOfBox, type Beam } from './beam.ts';
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
    isClearOf(beam) {
      return !hierarchy.shapecast({
        intersectsBounds: (box) => (isClearOfBox(beam, box) ? NOT_INTERSECTED : INTERSECTED),
        intersectsRange: () => true,
      });
    },
  };
}

function isClearOfBox(beam: Beam, { min, max }: Box3): boolean {
  return (
    standingOfBox(
      (max.x - min.x) / 2,
      (max.y - min.y) / 2,
      (max.z - min.z) / 2,
      beam[0]! - (min.x + max.x) / 2,
      beam[1]! - (min.y + max.y) / 2,
      beam[2]! - (min.z + max.z) / 2,
      beam[4]! - beam[0]!,
      beam[5]! - beam[1]!,
      beam[6]! - beam[2]!,
      beam[3]! + CLEARANCE,
      beam[7]! - beam[3]!,
    ) === CLEAR
  );
}
