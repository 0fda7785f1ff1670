/** Where a face-on map lies in its picture. */
import type { MirrorShape } from '../../engine/geometry/mirrorShape.ts';
import type { Plant } from '../../engine/index.ts';

export interface Frame {
  /** m, x of the middle of the map */
  readonly centerX: number;
  /** m, half the side of the map */
  readonly reach: number;
  /** side, and place of the upper left corner, picture units */
  readonly size: number;
  readonly left: number;
  readonly top: number;
}

/** Room around the rim, as a share of its radius. */
const ROOM = 1.03;
/** Filaments are marked up to this many rim radii from the middle; farther ones would shrink the mirror. */
const FARTHEST = 1.28;

const offCenter = ({ shape }: Plant, [x, y]: readonly [number, number, number]): number =>
  Math.hypot(x - shape.centerX, y);

/** Filaments outside the rim that fit on a map. */
export function filamentsAround(plant: Plant): Plant['filaments'] {
  const { rimRadius } = plant.shape;
  const outside = plant.filaments.filter(({ center }) => offCenter(plant, center) > rimRadius);
  return outside.every(({ center }) => offCenter(plant, center) <= FARTHEST * rimRadius) ? outside : [];
}

/** Half the side of the square that shows the mirror, the filaments around it and the witnesses beside it, m. */
export function mapReach(plant: Plant): number {
  const { rimRadius } = plant.shape;
  const around = [...filamentsAround(plant).map(({ center }) => center), ...witnessesOn(plant).map((w) => w.position)];
  return ROOM * Math.max(rimRadius, ...around.map((center) => offCenter(plant, center)));
}

/** Witnesses that fit on a map. */
export function witnessesOn(plant: Plant): Plant['witnesses'] {
  return plant.witnesses.filter(({ position }) => offCenter(plant, position) <= FARTHEST * plant.shape.rimRadius);
}

/** Picture coordinates of a place, m. */
export function toPicture(frame: Frame, x: number, y: number): readonly [number, number] {
  const scale = frame.size / (2 * frame.reach);
  return [frame.left + (x - frame.centerX + frame.reach) * scale, frame.top + (frame.reach - y) * scale];
}

/** The place of picture coordinates, m. */
export function toPlace(frame: Frame, px: number, py: number): readonly [number, number] {
  const scale = (2 * frame.reach) / frame.size;
  return [frame.centerX - frame.reach + (px - frame.left) * scale, frame.reach - (py - frame.top) * scale];
}

const n = (value: number): string => String(Number(value.toFixed(2)));

/** A circle about the middle of the glass as an SVG path. */
function circlePath(frame: Frame, radius: number): string {
  const r = (radius * frame.size) / (2 * frame.reach);
  const [x, y] = toPicture(frame, frame.centerX, 0);
  return `M${n(x - r)} ${n(y)}a${n(r)} ${n(r)} 0 1 0 ${n(2 * r)} 0a${n(r)} ${n(r)} 0 1 0 ${n(-2 * r)} 0z`;
}

/** Outline of the glass with its hole as an SVG path, to be filled by the even-odd rule. */
export function outlinePath(frame: Frame, shape: MirrorShape): string {
  const hole = shape.holeRadius > 0 ? circlePath(frame, shape.holeRadius) : '';
  const { cornerAngle } = shape;
  if (cornerAngle === null) return circlePath(frame, shape.rimRadius) + hole;
  const corners = Array.from({ length: 6 }, (_, k) => {
    const angle = cornerAngle + (k * Math.PI) / 3;
    const [x, y] = toPicture(
      frame,
      shape.centerX + shape.rimRadius * Math.cos(angle),
      shape.rimRadius * Math.sin(angle),
    );
    return `${n(x)} ${n(y)}`;
  });
  return `M${corners.join('L')}z${hole}`;
}

/** The clear aperture where it ends on the glass, as an SVG path; empty if all of the glass is clear. */
export function aperturePath(frame: Frame, shape: MirrorShape): string {
  const inner = shape.clearInnerRadius > shape.holeRadius ? circlePath(frame, shape.clearInnerRadius) : '';
  const outer = shape.clearOuterRadius < shape.rimRadius ? circlePath(frame, shape.clearOuterRadius) : '';
  return inner + outer;
}
