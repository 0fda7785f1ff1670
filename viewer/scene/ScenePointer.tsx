/** What the pointer does in the picture: reads the coat, tells names, selects. Turning the view is left alone. */
import { useThree } from '@react-three/fiber';
import { useEffect } from 'react';
import { Raycaster, Vector2, type PerspectiveCamera } from 'three';
import { firstHitOfFace, glassOf } from '../../engine/geometry/glass.ts';
import { probeAt } from '../state/probeStore.ts';
import { select, toggleSelected, type Part } from '../state/selection.ts';
import { hover } from './hoverStore.ts';
import { pickPart } from './pick.ts';
import { usePicture } from './picture.ts';
import { sceneAccess } from './sceneAccess.ts';

/** Farther than this between press and release, px, the pointer has turned the view and selected nothing. */
const SLIP = 4;

type Screen = readonly [number, number];

function placeIn(element: HTMLElement, event: PointerEvent | MouseEvent): Screen {
  const box = element.getBoundingClientRect();
  return [event.clientX - box.left, event.clientY - box.top];
}

function partAt(at: Screen): Part | null {
  const { picture } = usePicture.getState();
  const access = sceneAccess();
  if (!picture || !access) return null;
  const { clientWidth: width, clientHeight: height } = access.element;
  return pickPart({ ...access, width, height }, picture.plant, at);
}

function readCoat(camera: PerspectiveCamera, element: HTMLElement, [x, y]: Screen): void {
  const { picture } = usePicture.getState();
  if (!picture) return;
  const raycaster = new Raycaster();
  const onScreen = new Vector2((2 * x) / element.clientWidth - 1, 1 - (2 * y) / element.clientHeight);
  raycaster.setFromCamera(onScreen, camera);
  const { origin: o, direction: d } = raycaster.ray;
  const t = firstHitOfFace(glassOf(picture.coat.plant.shape), o.x, o.y, o.z, d.x, d.y, d.z, 0);
  if (t < Infinity) probeAt(o.x + t * d.x, o.y + t * d.y);
}

export function ScenePointer() {
  const camera = useThree((state) => state.camera) as PerspectiveCamera;
  const element = useThree((state) => state.gl.domElement);
  useEffect(() => {
    let frameId = 0;
    let pressed: Screen | null = null;
    const moved = (event: PointerEvent): void => {
      if (event.buttons !== 0) return hover(null); // the user turns the view
      cancelAnimationFrame(frameId);
      frameId = requestAnimationFrame(() => {
        const at = placeIn(element, event);
        readCoat(camera, element, at);
        const part = partAt(at);
        element.style.cursor = part && part.kind !== 'mirror' && part.kind !== 'tank' ? 'pointer' : '';
        hover(part && { part, at });
      });
    };
    const left = (): void => {
      cancelAnimationFrame(frameId);
      hover(null);
    };
    const down = (event: PointerEvent): void => {
      pressed = event.button === 0 ? placeIn(element, event) : null;
      element.closest<HTMLElement>('[tabindex]')?.focus({ preventScroll: true });
    };
    const up = (event: PointerEvent): void => {
      const at = placeIn(element, event);
      const hasSlipped = !pressed || Math.hypot(at[0] - pressed[0], at[1] - pressed[1]) > SLIP;
      pressed = null;
      if (hasSlipped || event.button !== 0) return;
      const part = partAt(at);
      if (part && (event.shiftKey || event.ctrlKey || event.metaKey)) toggleSelected(part);
      else if (part || !(event.shiftKey || event.ctrlKey)) select(part);
    };
    const twice = (event: MouseEvent): void => {
      const part = partAt(placeIn(element, event));
      if (part?.kind === 'filament') select({ kind: 'set', index: part.set });
    };
    element.addEventListener('pointermove', moved);
    element.addEventListener('pointerleave', left);
    element.addEventListener('pointerdown', down);
    element.addEventListener('pointerup', up);
    element.addEventListener('dblclick', twice);
    return () => {
      cancelAnimationFrame(frameId);
      element.removeEventListener('pointermove', moved);
      element.removeEventListener('pointerleave', left);
      element.removeEventListener('pointerdown', down);
      element.removeEventListener('pointerup', up);
      element.removeEventListener('dblclick', twice);
    };
  }, [camera, element]);
  return null;
}
