/** The form of given parts, all of one kind: what is changed is changed in all of them. */
import { useState, type FocusEvent, type MouseEvent, type ReactNode } from 'react';
import { useDesign } from '../../state/designStore.ts';
import { partValue } from '../../state/edits/setField.ts';
import { partKey, type Part } from '../../state/selection.ts';
import { defaultTextOf } from './defaultText.ts';
import { Control } from './fields/Control.tsx';
import { FormContext, type Form } from './fields/formContext.ts';
import { changeField } from './formEdits.ts';
import { PartFields } from './PartFields.tsx';
import './plant.css';

const HINT = 'Quantities take any unit, such as 34 in; arrow keys step the last digit, with Shift ten times as far.';

interface PartsFormProps {
  /** none for the plant itself */
  readonly parts: readonly Part[];
  /** in the heading */
  readonly title: ReactNode;
  /** id of the heading, of which a page has one */
  readonly titleId: string;
  /** instead of all fields of the parts: those chosen by the caller, made of useForm().Control */
  readonly fields?: ReactNode;
  /** stands under the fields */
  readonly children?: ReactNode;
}

export function PartsForm({ parts, title, titleId, fields, children }: PartsFormProps) {
  const present = useDesign((state) => state.current);
  const [help, setHelp] = useState<string | null>(null);
  const edited: readonly (Part | null)[] = parts.length > 0 ? parts : [null];
  const form: Form = {
    change: (path, change, noun) => changeField(edited, path, change, noun),
    defaultText: (field) => defaultTextOf(field, present, parts.at(-1) ?? null),
    Control,
    parts: edited.map((part) => partValue(present.file, part)),
  };
  const explain = ({ target }: FocusEvent | MouseEvent): void => {
    const text = (target as HTMLElement).closest<HTMLElement>('[data-help]')?.dataset['help'];
    setHelp(text === undefined || text === '' ? null : text);
  };
  return (
    <section className="panel plant-form" aria-labelledby={titleId} onFocus={explain} onMouseOver={explain}>
      <h2 id={titleId}>{title}</h2>
      <FormContext.Provider value={form}>
        {/* a form for other parts begins afresh: no draft of one part may land in another */}
        <div className="plant-fields" key={edited.map((part) => (part ? partKey(part) : '')).join(' ')}>
          {fields ?? <PartFields parts={parts} />}
        </div>
      </FormContext.Provider>
      {children}
      <p className="plant-help" aria-hidden="true">
        {help ?? HINT}
      </p>
    </section>
  );
}
