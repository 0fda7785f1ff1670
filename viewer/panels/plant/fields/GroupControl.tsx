/** A section inside a part. One that needs values to exist is switched on and off as a whole. */
import { useId, useState } from 'react';
import { useForm, type ControlProps } from './formContext.ts';
import { inOrder } from './inOrder.ts';
import { isShown } from './isShown.ts';
import { startOf } from './starts.ts';
import { useShared } from './useValues.ts';

/** Sections that mean something else when they are there, though all that is in them may be left out. */
const SWITCHED = new Set(['vacuum.system.coldTrap', 'vacuum.system.glow']);

export function GroupControl({ field, path, name }: ControlProps) {
  const { Control, change, parts } = useForm();
  const shared = useShared(path);
  const id = useId();
  const [refusal, setRefusal] = useState<string | null>(null);
  if (field.kind !== 'group') return null;
  const isSwitched =
    SWITCHED.has(field.place) || (field.isOptional && field.fields.some(({ isOptional }) => !isOptional));
  const isThere = !isSwitched || shared !== undefined;
  const fields = inOrder(field.fields.filter(({ place }) => isShown(place, parts)));
  const controls = fields.map((one) => (
    <Control
      key={one.key}
      field={one}
      path={[...path, one.key]}
      name={
        name === undefined ? (field.label === '' ? undefined : `${field.label}: ${one.label}`) : `${name}: ${one.label}`
      }
    />
  ));
  if (field.label === '') return <div className="plant-grid">{controls}</div>;
  return (
    <fieldset className="plant-group" data-help={field.help} aria-describedby={`${id}-help`}>
      <legend>
        {isSwitched ? (
          <label className="check">
            <input
              type="checkbox"
              checked={isThere}
              onChange={(event) => {
                const start = event.target.checked ? startOf(field) : undefined;
                setRefusal(change(path, () => start, field.label.toLowerCase()));
              }}
            />
            {field.label}
          </label>
        ) : (
          field.label
        )}
      </legend>
      <span id={`${id}-help`} className="visually-hidden">
        {field.help}
      </span>
      {isThere && <div className="plant-grid">{controls}</div>}
      <p className="field-refusal" aria-live="polite">
        {refusal}
      </p>
    </fieldset>
  );
}
