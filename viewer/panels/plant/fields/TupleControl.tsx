/** A point, a direction or a size: its numbers side by side. */
import { RotateCcw } from 'lucide-react';
import { useUnits } from '../../../state/units.ts';
import { DraftInput } from './DraftInput.tsx';
import type { Field } from './field.ts';
import { useForm, type ControlProps } from './formContext.ts';
import { shownText } from './shownText.ts';
import { startOf } from './starts.ts';
import { typedValue } from './typedValue.ts';
import { useShared, VARIOUS } from './useValues.ts';
import { LABELS } from './words.ts';

/** Digits shown of a component of a direction. */
const NUMBER_DIGITS = 6;

type Tuple = Extract<Field, { kind: 'tuple' }>;

export function TupleControl({ field, path, name }: ControlProps) {
  const { change } = useForm();
  const shared = useShared(path);
  if (field.kind !== 'tuple') return null;
  const title = name ?? field.label;
  return (
    <div className="plant-tuple" role="group" aria-label={title} data-help={field.help}>
      {field.label !== '' && (
        <span className="plant-tuple-head">
          {field.label}
          {field.isOptional && shared !== undefined && (
            <button
              type="button"
              className="plant-clear"
              title="Back to the default"
              aria-label={`${title}: back to the default`}
              onClick={() => void change(path, () => undefined, title.toLowerCase())}
            >
              <RotateCcw aria-hidden="true" size={14} />
            </button>
          )}
        </span>
      )}
      <div className="plant-row" data-count={field.items.length}>
        {field.items.map((item, i) => (
          <Component key={item.key} tuple={field} item={item} i={i} path={path} title={title} />
        ))}
      </div>
    </div>
  );
}

interface ComponentProps extends Pick<ControlProps, 'path'> {
  readonly tuple: Tuple;
  readonly item: Field;
  readonly i: number;
  readonly title: string;
}

function Component({ tuple, item, i, path, title }: ComponentProps) {
  const { change } = useForm();
  const units = useUnits();
  const shared = useShared([...path, i]);
  const start = startOf(tuple) as readonly unknown[];
  // x, y and z, unless the place has better words
  const word = LABELS[item.place] ?? item.key;
  const shown = (value: unknown): string =>
    item.kind === 'quantity'
      ? shownText(String(value as string), item.dimension, item.place, units)
      : String(Number((value as number).toPrecision(NUMBER_DIGITS)));
  return (
    <DraftInput
      label={word}
      name={`${title}, ${word.toLowerCase()}`}
      help={item.help === tuple.help ? tuple.help : `${tuple.help}: ${item.help}`}
      value={shared === undefined || shared === VARIOUS ? '' : shown(shared)}
      placeholder={shared === VARIOUS ? 'various' : shown(start[i])}
      onCommit={(text) =>
        change(
          path,
          (old) => (Array.isArray(old) ? (old as unknown[]) : start).with(i, typedValue(item, text)),
          `${title.toLowerCase()} ${word.toLowerCase()}`,
        )
      }
    />
  );
}
