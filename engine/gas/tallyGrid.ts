/** Where atoms are counted: rings and sectors of the mirror, bands of the tank's walls, every other place. */
import { outlineRadius, slope, type MirrorShape } from '../geometry/mirrorShape.ts';
import type { Tank } from '../geometry/tank.ts';
import { FIRST_OBSTACLE } from '../transport/massRays.ts';

/** How finely atoms are counted. */
export interface TallyGrid {
  /** rings of equal area, seen face-on, from the hole to the outline */
  readonly rings: number;
  /** equal sectors, the first from clock angle 0 */
  readonly sectors: number;
  /** bands of equal height on the tank's side */
  readonly sideBands: number;
  /** rings of equal width on either end wall */
  readonly endRings: number;
}

export const DEFAULT_GRID: TallyGrid = { rings: 12, sectors: 24, sideBands: 8, endRings: 4 };

/**
 * Slots of a tally, in order: mirror cells (index = sector · rings + ring), bands of the tank's side from below,
 * rings of the end wall behind the mirror, rings of the end wall before it (both from the middle), edge and
 * back of the glass, shields, obstacles in the order of casters.
 */
export interface Slots {
  readonly face: number;
  readonly side: number;
  readonly lowEnd: number;
  readonly highEnd: number;
  readonly body: number;
  readonly shield: number;
  readonly obstacles: number;
  readonly count: number;
}

/** First slot of each kind. */
export function slotsOf(grid: TallyGrid, obstacleCount: number): Slots {
  const side = grid.rings * grid.sectors;
  const lowEnd = side + grid.sideBands;
  const highEnd = lowEnd + grid.endRings;
  const body = highEnd + grid.endRings;
  const obstacles = body + 2;
  return { face: 0, side, lowEnd, highEnd, body, shield: body + 1, obstacles, count: obstacles + obstacleCount };
}

/** The slot of an obstacle from the place that nearestHit gives. */
export function obstacleSlot(slots: Slots, place: number): number {
  return slots.obstacles + place - FIRST_OBSTACLE;
}

/** Where a mirror cell or a point lies in the smooth coordinates of the face. */
export interface FacePlace {
  /** share of the area, seen face-on, between the hole and here: 0 to 1 */
  readonly share: number;
  /** clock angle from the middle of the glass, rad */
  readonly angle: number;
}

/** The place of a point of the face. */
export function facePlace(shape: MirrorShape, x: number, y: number): FacePlace {
  const gx = x - shape.centerX;
  const angle = Math.atan2(y, gx);
  const hole2 = shape.holeRadius * shape.holeRadius;
  const outline = outlineRadius(shape, angle);
  return { share: (gx * gx + y * y - hole2) / (outline * outline - hole2), angle };
}

/** The mirror's cell under a point of its face. */
export function faceCell(grid: TallyGrid, shape: MirrorShape, x: number, y: number): number {
  const { share, angle } = facePlace(shape, x, y);
  const turn = angle / (2 * Math.PI);
  const ring = Math.min(grid.rings - 1, Math.max(0, Math.floor(share * grid.rings)));
  const sector = Math.min(grid.sectors - 1, Math.floor((turn < 0 ? turn + 1 : turn) * grid.sectors));
  return sector * grid.rings + ring;
}

/** The slot of a point on the tank's wall. */
export function wallSlot(grid: TallyGrid, slots: Slots, tank: Tank, x: number, y: number, z: number): number {
  const px = x - tank.centerX;
  const across = Math.sqrt(px * px + y * y);
  const toSide = tank.radius - across;
  const toLow = z - tank.lowZ;
  const toHigh = tank.highZ - z;
  if (toSide < toLow && toSide < toHigh) {
    const band = Math.floor((grid.sideBands * toLow) / (tank.highZ - tank.lowZ));
    return slots.side + Math.min(grid.sideBands - 1, Math.max(0, band));
  }
  const ring = Math.min(grid.endRings - 1, Math.floor((grid.endRings * across) / tank.radius));
  return (toLow < toHigh ? slots.lowEnd : slots.highEnd) + ring;
}

/** Points of the midpoint rule across a cell, each way. */
const FINE = 24;

/**
 * True areas of the mirror's cells, on its curved face.
 *
 *     dA = ½ (R(φ)² − h²) √(1 + z′²) d(share) dφ
 *
 * Error: below 1e-5, from the midpoint rule (its error falls with FINE²).
 *
 * @returns [rings · sectors] m²
 */
export function faceCellAreas(grid: TallyGrid, shape: MirrorShape): Float64Array {
  const areas = new Float64Array(grid.rings * grid.sectors);
  const dAngle = (2 * Math.PI) / (grid.sectors * FINE);
  const hole2 = shape.holeRadius * shape.holeRadius;
  for (let j = 0; j < grid.sectors * FINE; j++) {
    const angle = (j + 0.5) * dAngle;
    const span = outlineRadius(shape, angle) ** 2 - hole2;
    for (let i = 0; i < grid.rings * FINE; i++) {
      const r = Math.sqrt(hole2 + ((i + 0.5) / (grid.rings * FINE)) * span);
      const s = slope(shape, Math.hypot(shape.centerX + r * Math.cos(angle), r * Math.sin(angle)));
      const cell = Math.floor(j / FINE) * grid.rings + Math.floor(i / FINE);
      areas[cell]! += (span / (2 * grid.rings * FINE)) * dAngle * Math.sqrt(1 + s * s);
    }
  }
  return areas;
}
