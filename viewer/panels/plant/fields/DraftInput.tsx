/** A text field of a form: keeps what was typed until it is accepted, steps by arrow keys, explains itself. */
import { RotateCcw } from 'lucide-react';
import { useId, useState, type ChangeEvent, type KeyboardEvent } from 'react';
import { stepText } from '../../../format/stepText.ts';
import { Explained } from './Explained.tsx';

interface DraftInputProps {
  readonly label: string;
  /** name for screen readers, where the label is too short */
  readonly name?: string | undefined;
  readonly help: string;
  /** the text that stands for the present value; empty if there is none */
  readonly value: string;
  /** what holds while the field is empty */
  readonly placeholder?: string | undefined;
  /** takes a text; answers why not, or null if it was taken */
  readonly onCommit: (text: string) => string | null;
  /** gives the field its default again; null if it has none, or has it already */
  readonly onClear?: (() => string | null) | null;
  /** whether the text runs over several lines */
  readonly isLong?: boolean;
}

/** Presses with Shift step ten times as far. */
const BIG = 10;
const ARROWS: Readonly<Record<string, number>> = { ArrowUp: 1, ArrowDown: -1 };

export function DraftInput({
  label,
  name,
  help,
  value,
  placeholder,
  onCommit,
  onClear = null,
  isLong = false,
}: DraftInputProps) {
  const id = useId();
  const [draft, setDraft] = useState<string | null>(null);
  const [refusal, setRefusal] = useState<string | null>(null);
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

  const commit = (text: string): void => {
    if (text.trim() === value) return reset();
    const refused = onCommit(text.trim());
    setDraft(refused === null ? null : text);
    setRefusal(refused);
  };
  const onKeyDown = (event: KeyboardEvent<HTMLElement>): void => {
    if (event.key === 'Enter' && !(isLong && event.shiftKey)) commit(draft ?? value);
    if (event.key === 'Escape' && draft !== null) {
      event.stopPropagation();
      reset();
    }
    if (isLong) return;
    const steps = (ARROWS[event.key] ?? 0) * (event.shiftKey ? BIG : 1);
    if (steps === 0 || event.altKey || event.ctrlKey || event.metaKey) return;
    event.preventDefault();
    const from = draft ?? (value === '' ? (placeholder ?? '') : value);
    const to = stepText(from, steps);
    if (to !== from) commit(to);
  };
  const shared = {
    id,
    autoComplete: 'off',
    spellCheck: isLong,
    'aria-label': name,
    value: draft ?? value,
    placeholder,
    'aria-invalid': refusal !== null,
    'aria-describedby': `${id}-help ${id}-refusal`,
    onChange: ({ target }: ChangeEvent<HTMLInputElement | HTMLTextAreaElement>) => {
      setDraft(target.value);
      setRefusal(null);
    },
    onBlur: () => draft !== null && refusal === null && commit(draft),
    onKeyDown,
  };
  return (
    <Explained id={id} label={label} help={help} refusal={refusal}>
      <span className="plant-input">
        {isLong ? <textarea rows={4} className="plant-prose" {...shared} /> : <input type="text" {...shared} />}
        {onClear && (
          <button
            type="button"
            className="plant-clear"
            title="Back to the default"
            aria-label={`${name ?? label}: back to the default`}
            onClick={() => setRefusal(onClear())}
          >
            <RotateCcw aria-hidden="true" size={14} />
          </button>
        )}
      </span>
    </Explained>
  );
}
