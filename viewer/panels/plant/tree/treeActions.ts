/** What the tree does to the plant. Each answers why not, or null. */
import { useDesign } from '../../../state/designStore.ts';
import { addPart, type AddedKind } from '../../../state/edits/addPart.ts';
import { duplicatePart } from '../../../state/edits/duplicatePart.ts';
import { withOutOfUse } from '../../../state/edits/ownValues.ts';
import { edited, filamentsOf, hasPart, nameOfPart } from '../../../state/edits/parts.ts';
import { removeParts } from '../../../state/edits/removeParts.ts';
import { selectAll, useSelection, type Part } from '../../../state/selection.ts';
import { changeDesign, makeEdit, nameOfParts } from '../formEdits.ts';

/** The selected parts that the plant still has. */
export function presentSelection(): readonly Part[] {
  const { current } = useDesign.getState();
  return useSelection.getState().parts.filter((part) => hasPart(current, part));
}

/** Adds a part with ready values and selects it. */
export function add(kind: AddedKind): string | null {
  const { current } = useDesign.getState();
  const { file, part } = addPart(current, kind);
  return makeEdit(`new ${kind} ${nameOfPart({ ...current, file }, part)}`, edited(file, part));
}

/** Duplicates the last selected part and selects the duplicate. */
export function duplicateSelected(): string | null {
  const { current } = useDesign.getState();
  const part = presentSelection().at(-1);
  if (!part) return 'Select a part to duplicate.';
  return makeEdit(`duplicate of ${nameOfPart(current, part)}`, duplicatePart(current.file, part, current.files));
}

/** Deletes the selected parts; what follows them in the file is selected next. */
export function deleteSelected(): string | null {
  const parts = presentSelection();
  const [first] = parts;
  if (!first) return 'Select a part to delete.';
  const { current } = useDesign.getState();
  const refusal = makeEdit(`delete ${nameOfParts(parts)}`, removeParts(current.file, parts, current.files));
  if (refusal === null) selectAll(neighbours(first));
  return refusal;
}

/** What stands where a deleted part stood, or before it. */
function neighbours(part: Part): readonly Part[] {
  const { current } = useDesign.getState();
  const places =
    part.kind === 'filament'
      ? [part, { ...part, number: part.number - 1 }, { kind: 'set' as const, index: part.set }]
      : 'index' in part
        ? [part, { ...part, index: part.index - 1 }]
        : [];
  const found = places.find((place) => hasPart(current, place));
  return found ? [found] : [];
}

/** Marks the selected filaments, and those of selected sets and feeds, as out of use; or in use if all are out. */
export function toggleOutOfUse(): string | null {
  const { current } = useDesign.getState();
  const parts = presentSelection();
  const filaments = filamentsOf(current.plant, parts);
  if (filaments.length === 0) return 'Select filaments, sets or feeds to mark them as out of use.';
  const outOfUse = filaments.some((filament) => !filament.outOfUse);
  return changeDesign(`use of ${nameOfParts(parts)}`, (file) => withOutOfUse(file, filaments, outOfUse));
}
