/** From the pointer to a place along a line in the tank. */
import { Plane, Vector3, type Ray } from 'three';

/** Sine of the angle between a line and the view below which a drag along the line would leap. */
const END_ON = 0.1;

/**
 * How far along a line the pointer is, m; null if the line is seen end on.
 *
 * The pointer's ray is met with the plane that holds the line and faces the camera as far as it can.
 *
 * @param direction unit vector
 */
export function alongLine(ray: Ray, origin: Vector3, direction: Vector3): number | null {
  const view = origin.clone().sub(ray.origin).normalize();
  const across = new Vector3().crossVectors(direction, view);
  if (across.length() < END_ON) return null;
  const normal = across.cross(direction).normalize();
  const hit = ray.intersectPlane(new Plane().setFromNormalAndCoplanarPoint(normal, origin), new Vector3());
  return hit && hit.sub(origin).dot(direction);
}
