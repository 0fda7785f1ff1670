/** The handles of a selection: of the one part, or of several that move together as one step. */
import { filamentsOf } from '../state/edits/parts.ts';
import { partKey, type Part } from '../state/selection.ts';
import { axisHandles, handlesOf, middleOf, placeOf, type Design, type Handle } from './handles.ts';

/** Parts that are moved, each once: a feed stands for its filaments, and a set moves its own along. */
export function movedParts({ plant }: Design, selected: readonly Part[]): readonly Part[] {
  const parts = selected.flatMap((part): Part[] =>
    part.kind === 'feed'
      ? filamentsOf(plant, [part]).map(({ set, number }) => ({ kind: 'filament', set, number }))
      : [part],
  );
  const sets = new Set(parts.flatMap((part) => (part.kind === 'set' ? part.index : [])));
  const once = new Map(parts.map((part) => [partKey(part), part]));
  return [...once.values()].filter((part) => part.kind !== 'filament' || !sets.has(part.set));
}

/**
 * The handles of all that is selected. Several parts move along x, y and z from their common middle; what has no place
 * of its own stays.
 *
 * @param order see obstacleOrder
 * @param clockAngle where a ring shows its handles, rad
 */
export function handlesOfAll(
  design: Design,
  selected: readonly Part[],
  order: readonly number[],
  clockAngle: number,
): Handle[] {
  const placed = movedParts(design, selected).flatMap((part) => {
    const place = placeOf(design, part, order);
    return place ? [{ part, place }] : [];
  });
  const [first] = placed;
  if (!first) return [];
  if (placed.length === 1) return handlesOf(design, first.part, order, clockAngle);
  return axisHandles(
    design,
    placed.map(({ part }) => part),
    `${placed.length} parts`,
    middleOf(placed.map(({ place }) => place)),
  );
}
