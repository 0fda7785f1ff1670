/** Where on a ring its handles are: to the right as the user sees it, in twelfths of a turn. */
import { create } from 'zustand';
import { Vector3, type PerspectiveCamera } from 'three';
import { useGesture } from '../state/editDesign.ts';

const TWELFTH = Math.PI / 6;

export const useRingAngle = create<{ readonly angle: number }>(() => ({ angle: 0 }));

/** Moves the handles to the right side of the view; not while one of them is held. */
export function followCamera(camera: PerspectiveCamera): void {
  if (useGesture.getState().isActive) return;
  const right = new Vector3(1, 0, 0).applyQuaternion(camera.quaternion);
  const angle = Math.round(Math.atan2(right.y, right.x) / TWELFTH) * TWELFTH;
  if (angle !== useRingAngle.getState().angle) useRingAngle.setState({ angle });
}
