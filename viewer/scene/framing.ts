/** Where the camera stands so that the tank fills the picture. */
import { Box2, Vector2, Vector3, type PerspectiveCamera } from 'three';
import type { Plant } from '../../engine/index.ts';
import { cutHeight } from './parts/shellPart.ts';
import type { ViewName } from './views.ts';

/** A view: from where the camera looks at the target, both m. */
export interface Framing {
  readonly position: Vector3;
  readonly target: Vector3;
}

/** Share of the picture's half width and half height that the plant may fill; the rest is for labels. */
const FILL = 0.95;
/** Directions from the target to the camera; those along the axis lean by less than is seen, so that "up" stays defined. */
const DIRECTIONS: Readonly<Record<ViewName, Vector3>> = {
  free: new Vector3(-0.42, -1, 0.92).normalize(),
  front: new Vector3(0, -1e-4, 1).normalize(),
  side: new Vector3(0, -1, 0),
  mirror: new Vector3(0, -1e-4, -1).normalize(),
};

function cornersOf(plant: Plant): Vector3[] {
  const { tank } = plant;
  return [tank.lowZ, cutHeight(plant)].flatMap((z) =>
    Array.from({ length: 24 }, (_, i) => {
      const angle = (2 * Math.PI * i) / 24;
      return new Vector3(tank.centerX + tank.radius * Math.cos(angle), tank.radius * Math.sin(angle), z);
    }),
  );
}

/** Rounds of moving nearer and centring; each leaves a tenth of the error of the one before. */
const ROUNDS = 4;
const HALVINGS = 30;

/** Extent of the corners on screen, in half widths and half heights of the picture. */
function extent(corners: readonly Vector3[], camera: PerspectiveCamera): Box2 {
  const box = new Box2();
  for (const corner of corners) {
    const { x, y, z } = corner.clone().project(camera);
    // behind the camera: larger than any picture
    box.expandByPoint(z < 1 ? new Vector2(x, y) : new Vector2(Infinity, Infinity));
  }
  return box;
}

/** The nearest place along a direction from which the whole plant is seen, in the middle of the picture. */
export function frame(plant: Plant, camera: PerspectiveCamera, view: ViewName): Framing {
  const direction = DIRECTIONS[view];
  const { tank } = plant;
  const target = new Vector3(tank.centerX, 0, (tank.lowZ + cutHeight(plant)) / 2);
  const trial = camera.clone();
  const corners = cornersOf(plant);
  const stand = (distance: number): Box2 => {
    trial.position.copy(target).addScaledVector(direction, distance);
    trial.lookAt(target);
    trial.updateMatrixWorld();
    return extent(corners, trial);
  };
  let far = 0;
  for (let round = 0; round < ROUNDS; round++) {
    let near = 0.5 * tank.radius;
    far = 40 * tank.radius;
    for (let i = 0; i < HALVINGS; i++) {
      const middle = (near + far) / 2;
      const { min, max } = stand(middle);
      if (max.x - min.x <= 2 * FILL && max.y - min.y <= 2 * FILL) far = middle;
      else near = middle;
    }
    const middle = stand(far).getCenter(new Vector2());
    const halfHeight = far * Math.tan((camera.fov * Math.PI) / 360);
    const up = new Vector3(0, 1, 0).applyQuaternion(trial.quaternion);
    target.addScaledVector(up, middle.y * halfHeight);
  }
  return { position: target.clone().addScaledVector(direction, far), target };
}
