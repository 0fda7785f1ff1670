/** A 3D scene as a GLB file. */
import type { Object3D } from 'three';
import { GLTFExporter } from 'three/addons/exporters/GLTFExporter.js';

/** An object and what hangs under it as binary glTF. */
export async function sceneGlb(object: Object3D): Promise<Blob> {
  const content = await new GLTFExporter().parseAsync(object, { binary: true, onlyVisible: true });
  if (!(content instanceof ArrayBuffer)) throw new Error('the exporter made text where bytes were expected');
  return new Blob([content], { type: 'model/gltf-binary' });
}
