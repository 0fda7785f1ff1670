/** Single filaments: what they carry and whether they are used; in a list also their place, axis, name and feed. */
import { useState } from 'react';
import { useDesign } from '../../state/designStore.ts';
import { asSingleFilaments, hasSingleFilaments } from '../../state/edits/singleFilaments.ts';
import type { Field } from './fields/field.ts';
import { useForm } from './fields/formContext.ts';
import { changeDesign } from './formEdits.ts';
import type { Parts } from './partsOf.ts';

/** What every filament can have of its own, wherever it stands. */
const EVERYWHERE = ['charge', 'outOfUse'];

interface FilamentFieldsProps {
  readonly parts: Parts<'filament'>;
  readonly fields: readonly Field[];
}

export function FilamentFields({ parts, fields }: FilamentFieldsProps) {
  const { Control } = useForm();
  const sets = useDesign((state) => state.current.file.filaments);
  const [refusal, setRefusal] = useState<string | null>(null);
  const counted = [...new Set(parts.map(({ set }) => set))].filter((iSet) => !hasSingleFilaments(sets[iSet]));
  const names = counted.map((iSet) => sets[iSet]?.name ?? '').join(', ');
  const shown = fields.filter(({ key }) => counted.length === 0 || EVERYWHERE.includes(key));
  const ordered = [...shown].sort((a, b) => rank(a.key) - rank(b.key));
  return (
    <>
      <div className="plant-grid">
        {ordered.map((field) => (
          <Control key={field.key} field={field} path={[field.key]} />
        ))}
      </div>
      {counted.length > 0 && (
        <div className="plant-actions">
          <p className="quiet">Place, axis, name and feed follow from the set {names}.</p>
          <button
            type="button"
            onClick={() => {
              const { files } = useDesign.getState().current;
              setRefusal(
                changeDesign(`arrangement of ${names}`, (file) =>
                  counted.reduce((next, iSet) => asSingleFilaments(next, iSet, files), file),
                ),
              );
            }}
          >
            Turn {names} into single filaments
          </button>
        </div>
      )}
      <p className="field-refusal" aria-live="polite">
        {refusal}
      </p>
    </>
  );
}

/** Charge and use come first: they are what changes from shot to shot. */
function rank(key: string): number {
  const at = EVERYWHERE.indexOf(key);
  return at < 0 ? EVERYWHERE.length : at;
}
