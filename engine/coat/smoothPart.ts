/** The part of a coat that nothing hides: which filaments make it, and how it joins the rest. */
import { valuesOnFaceInto } from '../field/evaluateSeries.ts';
import type { SmoothField } from '../field/smoothField.ts';
import type { Face } from '../geometry/face.ts';
import { glassOf } from '../geometry/glass.ts';
import type { KeyedSource, SceneData } from '../transport/transport.ts';
import { canBeHidden, createVisibility } from '../transport/visibility.ts';

/** Indices of the filaments that see all of the face. */
export function clearSources({ shape, tank, solids, meshes }: SceneData, sources: readonly KeyedSource[]): number[] {
  if (meshes.length > 0) return [];
  const visibility = createVisibility({ glass: glassOf(shape), tank, solids, meshes: [] });
  return sources.flatMap(({ source }, f) => (canBeHidden(visibility, source) ? [] : [f]));
}

/**
 * Indices of the filaments that are still to be summed directly, rising.
 *
 * @param clear indices of those that were given to the field
 * @param rough of these, the places of those that it left out
 */
export function restOf(count: number, clear: readonly number[], rough: readonly number[]): number[] {
  const isInField = new Uint8Array(count);
  for (const f of clear) isInField[f] = 1;
  for (const k of rough) isInField[clear[k]!] = 0;
  return Array.from({ length: count }, (_, f) => f).filter((f) => isInField[f] === 0);
}

/** Adds a field to the direct sum, kg/m²; where it is thinner than its own error it may not take anything away. */
export function addFieldTo(areal: Float64Array, { series }: SmoothField, face: Face): Float64Array {
  const values = valuesOnFaceInto(new Float64Array(areal.length), series, face);
  return areal.map((direct, i) => direct + Math.max(0, values[i]!));
}
