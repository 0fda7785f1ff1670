/** The form for the selected part: the last one selected, and with it all others of its kind. */
import { useState, type FocusEvent, type MouseEvent } from 'react';
import { useDesign } from '../../state/designStore.ts';
import { hasPart } from '../../state/edits/parts.ts';
import { partValue } from '../../state/edits/setField.ts';
import { partKey, useSelection, type Part } from '../../state/selection.ts';
import { defaultTextOf } from './defaultText.ts';
import { Control } from './fields/Control.tsx';
import { FormContext, type Form } from './fields/formContext.ts';
import { changeField, nameOfParts } from './formEdits.ts';
import { PartFields } from './PartFields.tsx';
import './plant.css';

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

const HINT = 'Quantities take any unit, such as 34 in; arrow keys step the last digit, with Shift ten times as far.';

export function PartForm() {
  const present = useDesign((state) => state.current);
  const selected = useSelection((state) => state.parts);
  const [help, setHelp] = useState<string | null>(null);
  const last = selected.findLast((part) => hasPart(present, part)) ?? null;
  const parts = last ? selected.filter((part) => part.kind === last.kind && hasPart(present, part)) : [];
  const edited: readonly (Part | null)[] = last ? parts : [null];
  const form: Form = {
    change: (path, change, noun) => changeField(edited, path, change, noun),
    defaultText: (field) => defaultTextOf(field, present, last),
    Control,
    parts: edited.map((part) => partValue(present.file, part)),
  };
  const explain = ({ target }: FocusEvent | MouseEvent): void => {
    const text = (target as HTMLElement).closest<HTMLElement>('[data-help]')?.dataset['help'];
    setHelp(text === undefined || text === '' ? null : text);
  };
  const name = nameOfParts(edited);
  const kind = last ? KINDS[last.kind] : 'plant';
  return (
    <section className="panel plant-form" aria-labelledby="part-title" onFocus={explain} onMouseOver={explain}>
      <h2 id="part-title">
        {last ? name : 'Plant'} {name.toLowerCase() !== kind && last && parts.length === 1 && <small>{kind}</small>}
      </h2>
      <FormContext.Provider value={form}>
        {/* a form for other parts begins afresh: no draft of one part may land in another */}
        <div className="plant-fields" key={edited.map((part) => (part ? partKey(part) : '')).join(' ')}>
          <PartFields parts={parts} />
        </div>
      </FormContext.Provider>
      <p className="plant-help" aria-hidden="true">
        {help ?? HINT}
      </p>
    </section>
  );
}
