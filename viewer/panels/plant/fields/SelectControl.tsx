/** A choice among words, as a select. */
import { useId, useState } from 'react';
import { Explained } from './Explained.tsx';

export interface SelectOption {
  readonly value: string;
  readonly label: string;
}

interface SelectControlProps {
  readonly label: string;
  readonly name?: string | undefined;
  readonly help: string;
  /** empty if the parts do not agree */
  readonly value: string;
  readonly options: readonly SelectOption[];
  readonly onChoose: (value: string) => string | null;
}

export function SelectControl({ label, name, help, value, options, onChoose }: SelectControlProps) {
  const id = useId();
  const [refusal, setRefusal] = useState<string | null>(null);
  return (
    <Explained id={id} label={label} help={help} refusal={refusal}>
      <select
        id={id}
        value={value}
        aria-label={name}
        aria-describedby={`${id}-help ${id}-refusal`}
        onChange={(event) => setRefusal(onChoose(event.target.value))}
      >
        {value === '' && (
          <option value="" disabled>
            various
          </option>
        )}
        {options.map((option) => (
          <option key={option.value} value={option.value}>
            {option.label}
          </option>
        ))}
      </select>
    </Explained>
  );
}
