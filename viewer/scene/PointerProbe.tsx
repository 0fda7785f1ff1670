/** Reads the coat under the pointer. */
import { useThree } from '@react-three/fiber';
import { useEffect } from 'react';
import { Raycaster, Vector2 } from 'three';
import type { Plant } from '../../engine/index.ts';
import { firstHitOfFace, glassOf } from '../../engine/geometry/glass.ts';
import { probeAt } from '../state/probeStore.ts';

export function PointerProbe({ plant }: { readonly plant: Plant }) {
  const camera = useThree((state) => state.camera);
  const element = useThree((state) => state.gl.domElement);
  useEffect(() => {
    const glass = glassOf(plant.shape);
    const raycaster = new Raycaster();
    let frameId = 0;
    const read = (event: PointerEvent): void => {
      const box = element.getBoundingClientRect();
      const onScreen = new Vector2(
        (2 * (event.clientX - box.left)) / box.width - 1,
        1 - (2 * (event.clientY - box.top)) / box.height,
      );
      raycaster.setFromCamera(onScreen, camera);
      const { origin: o, direction: d } = raycaster.ray;
      const t = firstHitOfFace(glass, o.x, o.y, o.z, d.x, d.y, d.z, 0);
      if (t < Infinity) probeAt(o.x + t * d.x, o.y + t * d.y);
    };
    const moved = (event: PointerEvent): void => {
      if (event.buttons !== 0) return; // the user turns the view
      cancelAnimationFrame(frameId);
      frameId = requestAnimationFrame(() => read(event));
    };
    element.addEventListener('pointermove', moved);
    return () => {
      cancelAnimationFrame(frameId);
      element.removeEventListener('pointermove', moved);
    };
  }, [plant, camera, element]);
  return null;
}
