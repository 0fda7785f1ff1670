/** A plant as the plain data that a transport calculation needs, keyed by content. */
import type { FilamentSource } from '../emission/filamentSource.ts';
import type { OrientedPoints } from '../geometry/orientedPoints.ts';
import type { Plant } from '../plant/plant.ts';
import { contentKey } from './contentKey.ts';
import type { KeyedPoints, KeyedSource, SceneData } from './transport.ts';

/** The plant's tank, glass and obstacles with their key; in gas, if collisions per length are given, 1/m. */
export function sceneDataOf({ shape, tank, solids, meshes }: Plant, perFreePath = 0): SceneData {
  const key = contentKey(
    JSON.stringify([shape, tank]),
    perFreePath,
    solids.records,
    ...meshes.map(({ position }) => position),
  );
  return { key, shape, tank, solids, meshes, perFreePath };
}

function sourceKey({ position, axis, weight, law, shield }: FilamentSource): string {
  const lawText =
    law.kind === 'table'
      ? contentKey(law.table.angles, law.table.intensities)
      : law.kind === 'cosine'
        ? `cosine ${law.power}`
        : law.kind;
  return contentKey(position, axis, weight, lawText, JSON.stringify(shield));
}

function keyed({ source }: { readonly source: FilamentSource }): KeyedSource {
  return { key: sourceKey(source), source };
}

/** The plant's filaments with their keys, in order. */
export function keyedSourcesOf(plant: Plant): KeyedSource[] {
  return plant.filaments.map(keyed);
}

/** Points with the key of their content; `onFace` as in Visibility. */
export function keyedPoints(points: OrientedPoints, onFace = true): KeyedPoints {
  return { key: contentKey(points.position, points.normal, onFace ? 1 : 0), points, onFace };
}
