/** The picture's objects for a file of their own. */
import { Group } from 'three';
import { sceneAccess } from './sceneAccess.ts';

/**
 * Coat, glass, tank, obstacles, witnesses and coils as they are drawn now, in metres, z away from the mirror,
 * each a child of that name; null without a picture. Geometries and materials are those of the page: use
 * them at once, and dispose of none.
 */
export function exportObject(): Group | null {
  const access = sceneAccess();
  if (!access) return null;
  const group = new Group();
  group.name = 'plant';
  for (const thing of access.things) group.add(thing.clone(true));
  return group;
}
