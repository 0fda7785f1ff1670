/** Handles on screen: how far along a handle's line the pointer is, and where its grip is drawn. */
import { Raycaster, Vector2, Vector3 } from 'three';
import { alongLine } from './axisDrag.ts';
import type { Handle } from './handles.ts';
import { sceneAccess } from './sceneAccess.ts';

/** How far along a handle's line a place in the window is, m; null if the line is seen end on. */
export function lineAt({ origin, direction }: Handle, clientX: number, clientY: number): number | null {
  const access = sceneAccess();
  if (!access) return null;
  const box = access.element.getBoundingClientRect();
  const onScreen = new Vector2((2 * (clientX - box.left)) / box.width - 1, 1 - (2 * (clientY - box.top)) / box.height);
  const raycaster = new Raycaster();
  access.camera.updateMatrixWorld();
  raycaster.setFromCamera(onScreen, access.camera);
  return alongLine(raycaster.ray, new Vector3(...origin), new Vector3(...direction));
}
