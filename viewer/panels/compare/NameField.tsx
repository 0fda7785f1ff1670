/** A name that is changed in its place. */
import { useId, useState, type KeyboardEvent } from 'react';

interface NameFieldProps {
  readonly label: string;
  readonly value: string;
  /** takes a name; answers why not, or null if it was taken */
  readonly onCommit: (name: string) => string | null;
}

export function NameField({ label, value, onCommit }: NameFieldProps) {
  const id = useId();
  const [draft, setDraft] = useState<string | null>(null);
  const [refusal, setRefusal] = useState<string | null>(null);
  const reset = (): void => {
    setDraft(null);
    setRefusal(null);
  };
  // not in an effect, which would run again when the stage is shown again
  const [valueOfDraft, setValueOfDraft] = useState(value);
  if (valueOfDraft !== value) {
    setValueOfDraft(value);
    reset();
  }
  const commit = (): void => {
    if (draft === null || draft.trim() === value) return reset();
    const refused = onCommit(draft);
    setRefusal(refused);
    if (refused === null) setDraft(null);
  };
  const onKeyDown = (event: KeyboardEvent<HTMLInputElement>): void => {
    if (event.key === 'Enter') commit();
    if (event.key !== 'Escape' || draft === null) return;
    event.stopPropagation();
    reset();
  };
  return (
    <div className="variant-name">
      <input
        type="text"
        autoComplete="off"
        spellCheck={false}
        maxLength={80}
        aria-label={label}
        title={draft ?? value}
        value={draft ?? value}
        data-draft={draft !== null || undefined}
        aria-invalid={refusal !== null}
        aria-describedby={refusal === null ? undefined : id}
        onChange={(event) => {
          setDraft(event.target.value);
          setRefusal(null);
        }}
        onBlur={() => refusal === null && commit()}
        onKeyDown={onKeyDown}
      />
      <p id={id} className="field-refusal" aria-live="polite">
        {refusal}
      </p>
    </div>
  );
}
