/** Where the camera stands so that the tank fills the picture. */
import { PerspectiveCamera, Vector3 } from 'three';
import type { Plant } from '../../engine/index.ts';
import { cutHeight } from './TankShell.tsx';

/** A view: from where the camera looks at the target, both m. */
export interface Framing {
  readonly position: Vector3;
  readonly target: Vector3;
}

/** Share of the picture's half width and half height that the plant may fill; the rest is for labels. */
const FILL = 0.94;
/** Direction from the target to the camera in the first view. */
const FIRST_VIEW = new Vector3(-0.42, -1, 0.92).normalize();
/** Straight above, leaning by less than is seen, so that "up" on screen stays defined. */
const FACE_ON = new Vector3(0, -1e-4, 1).normalize();

function cornersOf(plant: Plant): Vector3[] {
  const { tank } = plant;
  return [tank.lowZ, cutHeight(plant)].flatMap((z) =>
    Array.from({ length: 24 }, (_, i) => {
      const angle = (2 * Math.PI * i) / 24;
      return new Vector3(tank.centerX + tank.radius * Math.cos(angle), tank.radius * Math.sin(angle), z);
    }),
  );
}

/** The nearest place along a direction from which the whole plant is seen. */
export function frame(plant: Plant, camera: PerspectiveCamera, view: 'first' | 'face-on'): Framing {
  const direction = view === 'first' ? FIRST_VIEW : FACE_ON;
  const { tank } = plant;
  const target = new Vector3(tank.centerX, 0, (tank.lowZ + cutHeight(plant)) / 2);
  const trial = camera.clone();
  const corners = cornersOf(plant);
  let [near, far] = [0.5 * tank.radius, 40 * tank.radius];
  for (let i = 0; i < 40; i++) {
    const middle = (near + far) / 2;
    trial.position.copy(target).addScaledVector(direction, middle);
    trial.lookAt(target);
    trial.updateMatrixWorld();
    const fits = corners.every((corner) => {
      const p = corner.clone().project(trial);
      return Math.abs(p.x) <= FILL && Math.abs(p.y) <= FILL && p.z < 1;
    });
    if (fits) far = middle;
    else near = middle;
  }
  return { position: target.clone().addScaledVector(direction, far), target };
}
