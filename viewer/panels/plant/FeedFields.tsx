/** Feeds: which filaments they fire. What a feed is made of is changed in its set. */
import { useDesign } from '../../state/designStore.ts';
import { filamentsOf } from '../../state/edits/parts.ts';
import { withOutOfUse } from '../../state/edits/ownValues.ts';
import { selectAll } from '../../state/selection.ts';
import { shownQuantity, useUnits } from '../../state/units.ts';
import { changeDesign, nameOfParts } from './formEdits.ts';
import { NameField } from './NameField.tsx';
import type { Parts } from './partsOf.ts';

export function FeedFields({ parts }: { readonly parts: Parts<'feed'> }) {
  const present = useDesign((state) => state.current);
  const units = useUnits();
  const filaments = filamentsOf(present.plant, parts);
  const used = filaments.filter(({ outOfUse }) => !outOfUse);
  const mass = used.reduce((sum, { charge }) => sum + charge, 0);
  const sets = new Set(filaments.map(({ set }) => set));
  const canRename =
    parts.length === 1 && [...sets].every((iSet) => present.file.filaments[iSet]?.arrangement === 'list');
  const [first] = parts;
  return (
    <>
      {first && canRename && <NameField part={first} />}
      <p>
        Fires {used.length} of {filaments.length} filaments, {shownQuantity(units, 'mass', mass, 4)} of aluminium in
        all.
      </p>
      <p className="quiet">Feeds share out the filaments of a set; their number is a field of the set.</p>
      <div className="plant-actions">
        <button
          type="button"
          onClick={() => selectAll(filaments.map(({ set, number }) => ({ kind: 'filament', set, number })))}
        >
          Select its filaments
        </button>
        <button
          type="button"
          onClick={() =>
            void changeDesign(`use of ${nameOfParts(parts)}`, (file) => withOutOfUse(file, filaments, used.length > 0))
          }
        >
          {used.length > 0 ? 'Mark all as out of use' : 'Use all again'}
        </button>
      </div>
    </>
  );
}
