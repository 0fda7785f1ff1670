/** A described plant as physical objects, ready for transport. */
import type { Design } from '../design/designSchema.ts';
import type { FilamentSource } from '../emission/filamentSource.ts';
import type { MirrorShape } from '../geometry/mirrorShape.ts';
import type { Triangles } from '../geometry/stl.ts';
import type { Solids } from '../geometry/solids.ts';
import type { Tank } from '../geometry/tank.ts';

export interface Filament {
  /** its own name, or the set's name and its number */
  readonly name: string;
  /** index of its set in the design */
  readonly set: number;
  /** from 1, in its set */
  readonly number: number;
  readonly feed: string | null;
  /** kg hung on it */
  readonly charge: number;
  readonly outOfUse: boolean;
  /** m */
  readonly center: readonly [number, number, number];
  /** unit vector along the coil */
  readonly coilAxis: readonly [number, number, number];
  /** m, along the coil */
  readonly length: number;
  readonly loops: number;
  readonly source: FilamentSource;
}

export interface Witness {
  readonly name: string;
  /** m */
  readonly position: readonly [number, number, number];
  readonly normal: readonly [number, number, number];
  /** m² */
  readonly area: number;
  /** whether it lies on the glass, so that what it catches is missing there */
  readonly onGlass: boolean;
}

export interface Plant {
  readonly name: string;
  readonly story: string | null;
  readonly shape: MirrorShape;
  readonly tank: Tank;
  readonly setNames: readonly string[];
  readonly filaments: readonly Filament[];
  /** in the order of casters: solids, then meshes */
  readonly obstacleNames: readonly string[];
  readonly solids: Solids;
  readonly meshes: readonly Triangles[];
  readonly witnesses: readonly Witness[];
  readonly vacuum: Design['vacuum'];
  readonly film: Design['film'];
  readonly firing: Design['firing'];
}

/** Aluminium that each filament evaporates in the shot, kg: its charge, or nothing if it is out of use. */
export function evaporatedMasses(plant: Plant): Float64Array {
  return Float64Array.from(plant.filaments, ({ charge, outOfUse }) => (outOfUse ? 0 : charge));
}
