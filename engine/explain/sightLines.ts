/** Lines of sight worth drawing: from filaments to the two places, with their lengths. */
import type { OrientedPoints } from '../geometry/orientedPoints.ts';
import type { Scene } from '../geometry/scene.ts';
import { surfacePointInto, type MirrorShape } from '../geometry/mirrorShape.ts';
import { evaporatedMasses, type Filament, type Plant } from '../plant/plant.ts';
import type { CaseFound, Place } from './coatCase.ts';
import type { Decomposition } from './decompose.ts';
import { blockerOf, SEEN } from './sight.ts';

type Vector = readonly [number, number, number];

export interface SightLine {
  /** index into the plant's filaments */
  readonly filament: number;
  readonly place: Place;
  /** m */
  readonly start: Vector;
  readonly end: Vector;
  readonly length: number;
  /** `hidden`: something stands between; `idle`: the filament gives nothing */
  readonly state: 'clear' | 'hidden' | 'idle';
}

export interface SightLines {
  /** clock angle of the upright plane that the lines are best seen in, rad */
  readonly angle: number;
  readonly lines: readonly SightLine[];
}

function pointAt(shape: MirrorShape, radius: number, angle: number): Vector {
  const [position, normal] = [new Float64Array(3), new Float64Array(3)];
  const x = shape.centerX + radius * Math.cos(angle);
  surfacePointInto(position, normal, 0, shape, x, radius * Math.sin(angle));
  return [position[0]!, position[1]!, position[2]!];
}

function lineTo(plant: Plant, scene: Scene, f: number, place: Place, end: Vector): SightLine {
  const { center, source } = plant.filaments[f]!;
  const middle = Math.floor(source.count / 2);
  const [x, y, z] = source.position.subarray(3 * middle, 3 * middle + 3);
  const isIdle = evaporatedMasses(plant)[f] === 0;
  const isHidden = blockerOf(scene, source, middle, end[0] - x!, end[1] - y!, end[2] - z!) !== SEEN;
  const length = Math.hypot(end[0] - center[0], end[1] - center[1], end[2] - center[2]);
  return { filament: f, place, start: center, end, length, state: isIdle ? 'idle' : isHidden ? 'hidden' : 'clear' };
}

const angleOf = ({ centerX }: MirrorShape, { center: [x, y] }: Filament): number => Math.atan2(y, x - centerX);

/** Index of the largest value that is finite; −1 if there is none. */
function indexOfLargest(values: readonly number[]): number {
  return values.reduce((best, value, i) => (value > (values[best] ?? -Infinity) ? i : best), -1);
}

/**
 * Two zones: both lines from one filament, of the set whose share changes most, in the plane through it.
 * The filament is the one nearest to the plane y = 0 on its right-hand side.
 */
function zoneLines(plant: Plant, scene: Scene, { from, to }: CaseFound, parts: Decomposition): SightLines {
  const set = indexOfLargest(plant.setNames.map((_, i) => Math.abs(parts.to.bySet[i]! - parts.from.bySet[i]!)));
  const masses = evaporatedMasses(plant);
  const ranks = plant.filaments.map((filament, f) =>
    filament.set === set && masses[f]! > 0 ? -Math.abs(angleOf(plant.shape, filament)) : -Infinity,
  );
  const filament = indexOfLargest(ranks);
  if (filament < 0) return { angle: 0, lines: [] };
  const angle = angleOf(plant.shape, plant.filaments[filament]!);
  const lines = [to, from].map((place) =>
    lineTo(plant, scene, filament, place, pointAt(plant.shape, place.radius, angle)),
  );
  return { angle, lines };
}

/** A spot: the filament that serves it best, and the one that is missed most: hidden, or idle. */
function spotLines(plant: Plant, scene: Scene, { to }: CaseFound, parts: Decomposition): SightLines {
  const { points } = to;
  const end = pointOf(points);
  const angle = to.angle ?? 0;
  const best = indexOfLargest([...parts.to.byFilament]);
  const distances = plant.filaments.map(({ center }) => Math.hypot(...center.map((c, k) => c - end[k]!)));
  const all = plant.filaments.map((_, f) => lineTo(plant, scene, f, to, end));
  const missed = indexOfLargest(all.map(({ state }, f) => (state === 'clear' ? -Infinity : -distances[f]!)));
  return { angle, lines: [best, missed].filter((f) => f >= 0).map((f) => all[f]!) };
}

function pointOf({ position }: OrientedPoints): Vector {
  return [position[0]!, position[1]!, position[2]!];
}

/** The lines that show a case. */
export function sightLinesOf(plant: Plant, scene: Scene, found: CaseFound, parts: Decomposition | null): SightLines {
  if (!parts) return { angle: 0, lines: [] };
  return found.to.angle === null ? zoneLines(plant, scene, found, parts) : spotLines(plant, scene, found, parts);
}
