/** Plants, sources and receivers for tests, built through the same doors that users go through. */
import { createEvaluator, openPlantFile, type Coat, type EvaluateOptions, type Plant } from '../../engine/index.ts';
import type { EmissionLaw } from '../../engine/emission/emissionLaw.ts';
import type { FilamentSource } from '../../engine/emission/filamentSource.ts';
import { glassOf } from '../../engine/geometry/glass.ts';
import type { MirrorShape } from '../../engine/geometry/mirrorShape.ts';
import { createOrientedPoints, type OrientedPoints } from '../../engine/geometry/orientedPoints.ts';
import type { MeshSolid, Scene } from '../../engine/geometry/scene.ts';
import { packSolids, type Solids } from '../../engine/geometry/solids.ts';
import { evaporatedMasses } from '../../engine/plant/plant.ts';
import { computeColumn } from '../../engine/transport/column.ts';
import { createVisibility } from '../../engine/transport/visibility.ts';

export type Vector = readonly [number, number, number];
/** Part of a design file; the door checks it, so that it needs no closer type here. */
export type DesignPart = Readonly<Record<string, unknown>>;

/** A length as design files write it. */
export const metres = (value: number): string => `${value} m`;
/** A mass as design files write it. */
export const kilograms = (value: number): string => `${value} kg`;
/** A point or direction with lengths as design files write them. */
export const place = (point: Vector): string[] => point.map(metres);

/** The plant of a design; a problem in it fails the test with its sentence. */
export function plantOf(design: DesignPart): Plant {
  const opened = openPlantFile({ format: 'evenfall', version: 1, name: 'Tarn Hill test bench', ...design });
  if (!opened.ok) throw new Error(opened.problems.map(({ path, message }) => `${path}: ${message}`).join('\n'));
  return opened.plant;
}

/** A single small source at a place, 1 kg on it. */
export function oneSource(position: Vector, emission: DesignPart, more: DesignPart = {}): DesignPart {
  return sourceList([{ position, charge: 1 }], emission, more);
}

/** Small sources at given places with given charges, kg. */
export function sourceList(
  sources: readonly { readonly position: Vector; readonly charge: number; readonly axis?: Vector }[],
  emission: DesignPart,
  more: DesignPart = {},
): DesignPart {
  return {
    filamentTypes: { small: { emission, ...more } },
    filaments: [
      {
        arrangement: 'list',
        name: 'sources',
        type: 'small',
        filaments: sources.map(({ position, charge, axis }) => ({
          position: place(position),
          charge: kilograms(charge),
          ...(axis && { axis: [...axis] }),
        })),
      },
    ],
  };
}

/** The coat of a plant from a fresh evaluator. */
export async function coatOf(plant: Plant, options?: EvaluateOptions): Promise<Coat> {
  return createEvaluator().evaluate(plant, options);
}

/** Receivers anywhere, each a point and a unit normal. */
export function receivers(list: readonly { readonly point: Vector; readonly normal: Vector }[]): OrientedPoints {
  const points = createOrientedPoints(list.length);
  list.forEach(({ point, normal }, i) => {
    points.position.set(point, 3 * i);
    points.normal.set(normal, 3 * i);
  });
  return points;
}

/** Receivers on a plane at height z that face up. */
export function planeReceivers(places: readonly (readonly [number, number])[], z = 0): OrientedPoints {
  return receivers(places.map(([x, y]) => ({ point: [x, y, z], normal: [0, 0, 1] })));
}

/** A flat round mirror unless told otherwise. */
export function shapeOf(overrides: Partial<MirrorShape> = {}): MirrorShape {
  const rimRadius = overrides.rimRadius ?? 1;
  const holeRadius = overrides.holeRadius ?? 0;
  return {
    curvature: 0,
    conicConstant: 0,
    aspheric: [],
    centerX: 0,
    holeRadius,
    rimRadius,
    cornerAngle: null,
    clearInnerRadius: holeRadius,
    clearOuterRadius: rimRadius,
    thickness: 0.1,
    ...overrides,
  };
}

/** A scene around a mirror, in a tank far away unless told otherwise. */
export function sceneOf(
  shape: MirrorShape = shapeOf(),
  solids: Solids = packSolids([]),
  meshes: readonly MeshSolid[] = [],
): Scene {
  return { glass: glassOf(shape), tank: { radius: 1e3, centerX: 0, lowZ: -1e3, highZ: 1e3 }, solids, meshes };
}

/** One sub-source with a weight of 1 unless told otherwise. */
export function pointSource(law: EmissionLaw, position: Vector, axis: Vector = [0, 0, -1], weight = 1): FilamentSource {
  return {
    count: 1,
    position: Float64Array.from(position),
    axis: Float64Array.from(axis),
    weight: Float64Array.of(weight),
    law,
    shield: null,
  };
}

/** Mass per area at receivers where nothing stands in the way, kg/m². */
export function unshadowedDeposit(plant: Plant, points: OrientedPoints): Float64Array {
  // a flat mirror never shades what a source faces, and there are no obstacles
  const visibility = createVisibility(sceneOf());
  const masses = evaporatedMasses(plant);
  const areal = new Float64Array(points.count);
  plant.filaments.forEach(({ source }, f) => {
    const { deposit } = computeColumn(source, points, visibility);
    for (let i = 0; i < areal.length; i++) areal[i]! += masses[f]! * deposit[i]!;
  });
  return areal;
}

/** |actual − expected| over |expected|. */
export const relativeError = (actual: number, expected: number): number =>
  Math.abs(actual - expected) / Math.abs(expected);
