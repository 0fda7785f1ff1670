/** One of a few, side by side. */
import { useId } from 'react';

interface ChoicesProps<Value extends string> {
  readonly label: string;
  readonly choices: readonly (readonly [value: Value, text: string])[];
  readonly value: Value;
  readonly onChange: (value: Value) => void;
  readonly isDisabled?: boolean;
}

export function Choices<Value extends string>({
  label,
  choices,
  value,
  onChange,
  isDisabled = false,
}: ChoicesProps<Value>) {
  const id = useId();
  return (
    <fieldset className="learn-choices" disabled={isDisabled}>
      <legend>{label}</legend>
      {choices.map(([one, text]) => (
        <label key={one} className="check">
          <input type="radio" name={id} checked={one === value} onChange={() => onChange(one)} />
          {text}
        </label>
      ))}
    </fieldset>
  );
}
