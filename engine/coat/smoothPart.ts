/** The part of a coat that nothing hides: which filaments make it, and how it joins the rest. */
import { valuesOnFaceInto } from '../field/evaluateSeries.ts';
import type { SmoothField } from '../field/smoothField.ts';
import type { Face } from '../geometry/face.ts';
import { glassOf } from '../geometry/glass.ts';
import { packSolids } from '../geometry/solids.ts';
import type { KeyedSource, SceneData } from '../transport/transport.ts';
import { canBeHidden, createVisibility } from '../transport/visibility.ts';

/** Indices of the filaments that would see all of the face if there were no obstacles. */
export function clearSources({ shape, tank }: SceneData, sources: readonly KeyedSource[]): number[] {
  const empty = createVisibility({ glass: glassOf(shape), tank, solids: packSolids([]), meshes: [] });
  return sources.flatMap(({ source }, f) => (canBeHidden(empty, source) ? [] : [f]));
}

/** Whether there are obstacles that may shade something. */
export const hasObstacles = ({ solids, meshes }: SceneData): boolean => solids.count > 0 || meshes.length > 0;

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

/**
 * Adds a field, less what obstacles hide of it, to the direct sum, kg/m².
 *
 * Where something is hidden and no more is left than the field's own error, nothing is taken to arrive.
 *
 * @param hidden [points] kg/m², or null without obstacles
 */
export function addFieldTo(
  areal: Float64Array,
  { series, error }: SmoothField,
  hidden: Float64Array | null,
  face: Face,
): Float64Array {
  const values = valuesOnFaceInto(new Float64Array(areal.length), series, face);
  for (let i = 0; i < values.length; i++) {
    const lost = hidden ? hidden[i]! : 0;
    const left = values[i]! - lost;
    values[i] = areal[i]! + (lost > 0 && left <= error ? 0 : Math.max(0, left));
  }
  return values;
}
