/** The cylindrical tank around the mirror. */
import type { TankDesign } from '../design/designSchema.ts';
import { backHeight, type MirrorShape } from './mirrorShape.ts';

/** Share of the depth that the glass's back keeps from the end wall unless the design says otherwise. */
const DEFAULT_GAP_SHARE = 0.05;

export interface Tank {
  readonly radius: number;
  /** x of its axis, m: the middle of the glass */
  readonly centerX: number;
  /** z of the end wall behind the mirror, m */
  readonly lowZ: number;
  /** z of the end wall that the mirror faces, m */
  readonly highZ: number;
}

/** Places the tank around its mirror. */
export function tankOf(design: TankDesign, shape: MirrorShape): Tank {
  const lowZ =
    design.behindMirror === undefined ? backHeight(shape) - DEFAULT_GAP_SHARE * design.depth : -design.behindMirror;
  return { radius: design.diameter / 2, centerX: shape.centerX, lowZ, highZ: lowZ + design.depth };
}

/** Whether a point lies inside the tank. */
export function isInTank(tank: Tank, x: number, y: number, z: number): boolean {
  return Math.hypot(x - tank.centerX, y) < tank.radius && z > tank.lowZ && z < tank.highZ;
}

/** Where a ray that starts inside the tank meets its wall, as a multiple of its direction. */
export function exitOfTank(tank: Tank, ox: number, oy: number, oz: number, dx: number, dy: number, dz: number): number {
  const px = ox - tank.centerX;
  const a = dx * dx + dy * dy;
  const b = px * dx + oy * dy;
  const c = px * px + oy * oy - tank.radius * tank.radius;
  const side = a > 0 ? (-b + Math.sqrt(Math.max(0, b * b - a * c))) / a : Infinity;
  const end = dz > 0 ? (tank.highZ - oz) / dz : dz < 0 ? (tank.lowZ - oz) / dz : Infinity;
  return Math.min(side, end);
}
