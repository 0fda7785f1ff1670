/** A plate between a filament and the mirror, and what it takes from the coat along the line behind it. */
import { sag } from '../../../../engine/geometry/mirrorShape.ts';
import type { DesignFile, Plant } from '../../../../engine/index.ts';
import { changedPlant, firstFiring, inMetres } from '../bench.ts';
import type { Bench, Tools } from '../lesson.ts';
import { diameterLine, summed, thicknessByFilament } from './lineDeposit.ts';

const PLACES = 161;
/** Radius of the place that the plate hides, over the mirror's. */
const HIDDEN_AT = 0.6;

/** Where the plate is and how large. */
export interface Plate {
  /** share of the way from the mirror to the filament, 0 to 1 */
  readonly share: number;
  /** m */
  readonly diameter: number;
}

export interface ShadowLine {
  readonly plate: Plate;
  /** middle of the plate: along the section, and up; m */
  readonly center: readonly [along: number, z: number];
  /** [places] m */
  readonly along: Float64Array;
  readonly height: Float64Array;
  /** [places] thickness without and with the plate, from all filaments, m */
  readonly clear: Float64Array;
  readonly shaded: Float64Array;
  /** [places] the same from the one filament */
  readonly oneClear: Float64Array;
  readonly oneShaded: Float64Array;
}

export interface ShadowFacts {
  readonly filamentName: string;
  readonly firingCount: number;
  readonly filament: readonly [along: number, z: number];
  /** at half way */
  readonly half: ShadowLine;
  /** near the mirror and near the filament, the same plate */
  readonly low: ShadowLine;
  readonly high: ShadowLine;
}

export const LOW = 0.2;
export const HALF = 0.5;
export const HIGH = 0.8;

/** A plate about a tenth of the mirror wide. */
export const firstDiameter = ({ shape }: Plant): number => 0.2 * shape.rimRadius;

/** Section plane: through the middle of the glass and the first filament that fires. */
function sectionOf(plant: Plant) {
  const index = firstFiring(plant);
  const { center, name } = plant.filaments[index]!;
  const [dx, dy] = [center[0] - plant.shape.centerX, center[1]];
  return { index, name, angle: Math.atan2(dy, dx), across: Math.hypot(dx, dy), z: center[2] };
}

/** The coat along the section, without and with a plate. */
export async function shadowLine(bench: Bench, plate: Plate): Promise<ShadowLine> {
  const { plant } = bench;
  const { shape } = plant;
  const { index, angle, across, z } = sectionOf(plant);
  const hidden = Math.max(HIDDEN_AT * shape.rimRadius, (shape.holeRadius + shape.rimRadius) / 2);
  const [cos, sin] = [Math.cos(angle), Math.sin(angle)];
  const face = sag(shape, Math.hypot(shape.centerX + hidden * cos, hidden * sin));
  const center = [hidden + plate.share * (across - hidden), face + plate.share * (z - face)] as const;
  const disc = {
    shape: 'disc',
    name: 'plate of the lesson',
    center: [shape.centerX + center[0] * cos, center[0] * sin, center[1]].map(inMetres),
    normal: [0, 0, 1],
    diameter: inMetres(plate.diameter),
  };
  const withPlate = changedPlant(bench, (file: DesignFile) => ({
    ...file,
    obstacles: [...(file.obstacles ?? []), disc],
  }));
  const { along, points } = diameterLine(plant, angle, PLACES);
  const clear = await thicknessByFilament(plant, points);
  const shaded = await thicknessByFilament(withPlate, points);
  return {
    plate,
    center,
    along,
    height: Float64Array.from(along, (_, i) => points.position[3 * i + 2]!),
    clear: summed(clear),
    shaded: summed(shaded),
    oneClear: clear[index]!,
    oneShaded: shaded[index]!,
  };
}

export async function shadowFacts(bench: Bench, tools: Tools): Promise<ShadowFacts> {
  const { name, across, z } = sectionOf(bench.plant);
  const diameter = firstDiameter(bench.plant);
  const lines: ShadowLine[] = [];
  for (const share of [LOW, HALF, HIGH]) {
    lines.push(await shadowLine(bench, { share, diameter }));
    await tools.step(lines.length / 3);
  }
  const [low, half, high] = lines as [ShadowLine, ShadowLine, ShadowLine];
  const firingCount = bench.plant.filaments.filter(({ charge, outOfUse }) => charge > 0 && !outOfUse).length;
  return { filamentName: name, firingCount, filament: [across, z], half, low, high };
}

/** Largest share of the coat that is missing anywhere on a line. */
export function deepest(clear: Float64Array, shaded: Float64Array): number {
  let most = 0;
  for (let i = 0; i < clear.length; i++) if (clear[i]! > 0) most = Math.max(most, 1 - shaded[i]! / clear[i]!);
  return most;
}

/** Width of the one filament's shadow, m: where at least half as much is missing as at its darkest place. */
export function shadowWidth({ along, oneClear, oneShaded }: ShadowLine): number {
  const edge = deepest(oneClear, oneShaded) / 2;
  if (edge === 0) return 0;
  const isIn = (i: number): boolean => oneClear[i]! > 0 && 1 - oneShaded[i]! / oneClear[i]! >= edge;
  let width = 0;
  for (let i = 1; i < along.length; i++)
    width += ((along[i]! - along[i - 1]!) * (Number(isIn(i)) + Number(isIn(i - 1)))) / 2;
  return width;
}
