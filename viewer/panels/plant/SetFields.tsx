/** A filament set: its type, its charge, its feeds, and how its filaments stand. */
import { useState } from 'react';
import { useDesign } from '../../state/designStore.ts';
import { withArrangement, type Arrangement } from '../../state/edits/changeKind.ts';
import { asSingleFilaments, hasSingleFilaments } from '../../state/edits/singleFilaments.ts';
import { ChoiceControl } from './fields/ChoiceControl.tsx';
import { useForm } from './fields/formContext.ts';
import { fieldsOf, FORMS } from './fields/readSchema.ts';
import { SelectControl } from './fields/SelectControl.tsx';
import { useShared, VARIOUS } from './fields/useValues.ts';
import { TableDialog } from './dialogs.tsx';
import { changeDesign, nameOfParts } from './formEdits.ts';
import { NameField } from './NameField.tsx';
import type { Parts } from './partsOf.ts';

/** Turns sets into another arrangement, in one edit; answers why not, or null. */
function arrange(parts: Parts<'set'>, arrangement: Arrangement): string | null {
  const { current } = useDesign.getState();
  return changeDesign(`arrangement of ${nameOfParts(parts)}`, () =>
    parts.reduce((file, { index }) => withArrangement({ ...current, file }, index, arrangement), current.file),
  );
}

/** Turns rings, lines, grids and tables into single filaments; answers why not, or null. */
function arrangeSingly(parts: Parts<'set'>): string | null {
  const { files } = useDesign.getState().current;
  return changeDesign(`arrangement of ${nameOfParts(parts)}`, (file) =>
    parts.reduce((next, { index }) => asSingleFilaments(next, index, files), file),
  );
}

function TypeSelect() {
  const { change } = useForm();
  const shared = useShared(['type']);
  const types = useDesign((state) => state.current.file.filamentTypes);
  const field = fieldsOf(FORMS.set, 'ring').find(({ key }) => key === 'type');
  return (
    <SelectControl
      label="Type"
      help={field?.help ?? ''}
      value={shared === VARIOUS ? '' : String(shared as string)}
      options={Object.keys(types).map((name) => ({ value: name, label: name }))}
      onChoose={(name) => change(['type'], () => name, 'type')}
    />
  );
}

export function SetFields({ parts }: { readonly parts: Parts<'set'> }) {
  const sets = useDesign((state) => state.current.file.filaments);
  const [isPasting, setPasting] = useState(false);
  const [refusal, setRefusal] = useState<string | null>(null);
  const [first] = parts;
  const isSingle = parts.every(({ index }) => hasSingleFilaments(sets[index]));
  return (
    <>
      <div className="plant-grid">
        {first && parts.length === 1 && <NameField part={first} />}
        <ChoiceControl
          field={FORMS.set}
          path={[]}
          onConvert={(word) => arrange(parts, word as Arrangement)}
          replaced={{ name: null, type: <TypeSelect key="type" /> }}
        />
      </div>
      <div className="plant-actions">
        {!isSingle && (
          <button type="button" onClick={() => setRefusal(arrangeSingly(parts))}>
            Turn into single filaments
          </button>
        )}
        {parts.length === 1 && (
          <button type="button" onClick={() => setPasting(true)}>
            Replace from a table…
          </button>
        )}
      </div>
      <p className="field-refusal" aria-live="polite">
        {refusal}
      </p>
      {isPasting && first && <TableDialog iSet={first.index} onClose={() => setPasting(false)} />}
    </>
  );
}
