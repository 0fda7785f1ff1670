/** The form for the selected part: the last one selected, and with it all others of its kind. */
import { useDesign } from '../../state/designStore.ts';
import { hasPart } from '../../state/edits/parts.ts';
import { useSelection, type Part } from '../../state/selection.ts';
import { nameOfParts } from './formEdits.ts';
import { PartsForm } from './PartsForm.tsx';

const KINDS: Readonly<Record<Part['kind'], string>> = {
  mirror: 'mirror',
  tank: 'tank',
  vacuum: 'vacuum',
  film: 'film',
  type: 'filament type',
  set: 'filament set',
  filament: 'filament',
  feed: 'feed',
  obstacle: 'obstacle',
  witness: 'witness',
};

export function PartForm() {
  const present = useDesign((state) => state.current);
  const selected = useSelection((state) => state.parts);
  const last = selected.findLast((part) => hasPart(present, part)) ?? null;
  const parts = last ? selected.filter((part) => part.kind === last.kind && hasPart(present, part)) : [];
  const name = last ? nameOfParts(parts) : 'Plant';
  const kind = last ? KINDS[last.kind] : 'plant';
  const isKindSaid = last !== null && parts.length === 1 && name.toLowerCase() !== kind;
  return (
    <PartsForm
      parts={parts}
      titleId="part-title"
      title={
        <>
          {name} {isKindSaid && <small>{kind}</small>}
        </>
      }
    />
  );
}
