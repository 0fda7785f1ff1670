/** The camera and what it sees, for code outside the canvas: labels, handles, picking. */
import type { Object3D, PerspectiveCamera } from 'three';
import { Vector3 } from 'three';

export interface SceneAccess {
  readonly camera: PerspectiveCamera;
  readonly element: HTMLCanvasElement;
  /** meshes of the obstacles, each with its index in the file */
  readonly obstacles: Object3D;
  /** coat, glass, tank, obstacles, witnesses and coils, each by its name */
  readonly things: readonly Object3D[];
  readonly invalidate: () => void;
}

let access: SceneAccess | null = null;

/** Lends the scene out; returns how to take it back, unless another one has taken its place by then. */
export function lendScene(scene: SceneAccess): () => void {
  access = scene;
  return () => {
    if (access === scene) access = null;
  };
}

/** The scene on the page, if there is one. */
export function sceneAccess(): SceneAccess | null {
  return access;
}

/** A place on screen, px from the picture's upper left; null behind the camera. */
export function toScreen(
  camera: PerspectiveCamera,
  size: { readonly width: number; readonly height: number },
  place: readonly [number, number, number],
): readonly [number, number] | null {
  const p = new Vector3(...place).project(camera);
  return p.z < 1 ? [((p.x + 1) * size.width) / 2, ((1 - p.y) * size.height) / 2] : null;
}
