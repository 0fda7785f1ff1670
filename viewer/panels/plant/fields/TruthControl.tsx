/** Yes or no. */
import { useEffect, useId, useRef, useState } from 'react';
import { useForm, type ControlProps } from './formContext.ts';
import { useShared, VARIOUS } from './useValues.ts';

export function TruthControl({ field, path, name }: ControlProps) {
  const { change } = useForm();
  const shared = useShared(path);
  const id = useId();
  const [refusal, setRefusal] = useState<string | null>(null);
  const box = useRef<HTMLInputElement>(null);
  useEffect(() => {
    if (box.current) box.current.indeterminate = shared === VARIOUS;
  }, [shared]);
  return (
    <div className="plant-field plant-truth" data-help={field.help}>
      <label className="check">
        <input
          ref={box}
          type="checkbox"
          checked={shared === true}
          aria-label={name}
          aria-describedby={`${id}-help`}
          onChange={(event) => {
            const isOn = event.target.checked;
            setRefusal(change(path, () => (isOn || !field.isOptional ? isOn : undefined), field.label.toLowerCase()));
          }}
        />
        {field.label}
      </label>
      <span id={`${id}-help`} className="visually-hidden">
        {field.help}
      </span>
      <p className="field-refusal" aria-live="polite">
        {refusal}
      </p>
    </div>
  );
}
