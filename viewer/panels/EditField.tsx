/**
 * A text field that hands over what was typed, on Enter, on leaving, and at each step of an arrow key; what is refused
 * stays on screen with the reason. Escape brings the present value back. For any text that stands for a value: the owner
 * decides in `onCommit` what is good. QuantityField is made of it for a number with its unit.
 */
import { useEffect, useId, useRef, useState, type KeyboardEvent } from 'react';
import { stepText } from '../format/stepText.ts';

interface EditFieldProps {
  readonly label: string;
  /** the text that stands for the present value */
  readonly value: string;
  /** takes a text; answers why not, or null if it was taken */
  readonly onCommit: (text: string) => string | null;
  /** how many of the last digit one press of an arrow key steps */
  readonly stepFactor?: number;
  readonly isLabelHidden?: boolean;
  readonly isDisabled?: boolean;
}

/** Presses with Shift step ten times as far. */
const BIG = 10;

export function EditField({
  label,
  value,
  onCommit,
  stepFactor = 1,
  isLabelHidden = false,
  isDisabled = false,
}: EditFieldProps) {
  const id = useId();
  const [draft, setDraft] = useState<string | null>(null);
  const [refusal, setRefusal] = useState<string | null>(null);
  const reason = useRef<HTMLParagraphElement>(null);
  const reset = (): void => {
    setDraft(null);
    setRefusal(null);
  };
  // another value makes the draft obsolete; not in an effect, which would run again when a stage is shown again
  const [valueOfDraft, setValueOfDraft] = useState(value);
  if (valueOfDraft !== value) {
    setValueOfDraft(value);
    reset();
  }
  useEffect(() => {
    if (refusal !== null) reason.current?.scrollIntoView({ block: 'nearest' });
  }, [refusal]);

  const commit = (text: string): void => {
    if (text.trim() === value) return reset();
    const refused = onCommit(text.trim());
    setDraft(refused === null ? null : text);
    setRefusal(refused);
  };
  const onKeyDown = (event: KeyboardEvent<HTMLInputElement>): void => {
    if (event.key === 'Enter') commit(draft ?? value);
    if (event.key === 'Escape' && draft !== null) {
      event.stopPropagation();
      reset();
    }
    const direction = event.key === 'ArrowUp' ? 1 : event.key === 'ArrowDown' ? -1 : 0;
    if (direction === 0 || event.altKey || event.ctrlKey || event.metaKey) return;
    event.preventDefault();
    commit(stepText(draft ?? value, direction * stepFactor * (event.shiftKey ? BIG : 1)));
  };
  return (
    <div className="field">
      <label htmlFor={id} className={isLabelHidden ? 'visually-hidden' : undefined}>
        {label}
      </label>
      <input
        id={id}
        type="text"
        autoComplete="off"
        spellCheck={false}
        value={draft ?? value}
        disabled={isDisabled}
        data-draft={draft !== null || undefined}
        aria-invalid={refusal !== null}
        aria-describedby={refusal === null ? undefined : `${id}-refusal`}
        onChange={(event) => {
          setDraft(event.target.value);
          setRefusal(null);
        }}
        onBlur={() => draft !== null && refusal === null && commit(draft)}
        onKeyDown={onKeyDown}
      />
      <p ref={reason} id={`${id}-refusal`} className="field-refusal" aria-live="polite">
        {refusal}
      </p>
    </div>
  );
}
