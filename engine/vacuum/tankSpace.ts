/** The room in the tank: what must be pumped out, and how much wall faces it. */
import { isInTank, type Tank } from '../geometry/tank.ts';
import { backHeight, outlineRadius, sag, type MirrorShape } from '../geometry/mirrorShape.ts';
import { isInSolid, STRIDE, type Solids } from '../geometry/solids.ts';
import type { Triangles } from '../geometry/stl.ts';
import type { Plant } from '../plant/plant.ts';

export interface TankSpace {
  /** m³, free of glass and obstacles; overlaps of obstacles are counted twice */
  readonly volume: number;
  /** m², inner surface of the tank itself */
  readonly wallArea: number;
  /** m², reflecting face, as if flat */
  readonly faceArea: number;
}

/** Points a side of the grid that samples a solid: its volume to about 1 %. */
const SAMPLES = 24;
/** Share of the tank that stays free whatever stands in it. */
const LEAST_FREE = 0.05;

/** Volume of a box that holds a shape, times the share of its grid points inside. */
function sampledVolume(
  center: readonly [number, number, number],
  halfSide: readonly [number, number, number],
  isInside: (x: number, y: number, z: number) => boolean,
): number {
  const at = (k: number, i: number): number => center[k]! + halfSide[k]! * ((2 * i + 1) / SAMPLES - 1);
  let inside = 0;
  for (let i = 0; i < SAMPLES; i++)
    for (let j = 0; j < SAMPLES; j++)
      for (let k = 0; k < SAMPLES; k++) if (isInside(at(0, i), at(1, j), at(2, k))) inside++;
  return (8 * halfSide[0] * halfSide[1] * halfSide[2] * inside) / SAMPLES ** 3;
}

function solidVolume(solids: Solids, i: number, tank: Tank): number {
  const [x = 0, y = 0, z = 0, r = 0] = solids.records.subarray(STRIDE * i + 17, STRIDE * i + 21);
  return sampledVolume(
    [x, y, z],
    [r, r, r],
    (px, py, pz) => isInTank(tank, px, py, pz) && isInSolid(solids, i, px, py, pz),
  );
}

/** Volume inside a closed mesh, by the divergence theorem. */
function meshVolume({ position }: Pick<Triangles, 'position'>): number {
  let six = 0;
  for (let o = 0; o + 8 < position.length; o += 9) {
    const [ax, ay, az, bx, by, bz, cx, cy, cz] = position.subarray(o, o + 9) as unknown as number[];
    six += ax! * (by! * cz! - bz! * cy!) + ay! * (bz! * cx! - bx! * cz!) + az! * (bx! * cy! - by! * cx!);
  }
  return Math.abs(six) / 6;
}

/** Area of the mirror's face as seen face-on, and volume of the glass behind it; by rings and spokes. */
function glassOf(shape: MirrorShape): { readonly area: number; readonly volume: number } {
  const [rings, spokes] = [32, 48];
  const back = backHeight(shape);
  let area = 0;
  let volume = 0;
  for (let j = 0; j < spokes; j++) {
    const angle = (2 * Math.PI * (j + 0.5)) / spokes;
    const width = (outlineRadius(shape, angle) - shape.holeRadius) / rings;
    for (let i = 0; i < rings; i++) {
      const r = shape.holeRadius + (i + 0.5) * width;
      const cell = (r * width * 2 * Math.PI) / spokes;
      area += cell;
      volume += cell * (sag(shape, Math.hypot(shape.centerX + r * Math.cos(angle), r * Math.sin(angle))) - back);
    }
  }
  return { area, volume };
}

/** The room in the tank of a plant. */
export function tankSpace({
  tank,
  shape,
  solids,
  meshes,
}: Pick<Plant, 'tank' | 'shape' | 'solids' | 'meshes'>): TankSpace {
  const depth = tank.highZ - tank.lowZ;
  const whole = Math.PI * tank.radius ** 2 * depth;
  const glass = glassOf(shape);
  let filled = glass.volume;
  for (let i = 0; i < solids.count; i++) filled += solidVolume(solids, i, tank);
  for (const mesh of meshes) filled += meshVolume(mesh);
  return {
    volume: Math.max(whole - filled, LEAST_FREE * whole),
    wallArea: 2 * Math.PI * tank.radius * (tank.radius + depth),
    faceArea: glass.area,
  };
}
