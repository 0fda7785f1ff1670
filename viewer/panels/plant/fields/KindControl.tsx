/** A section of several kinds that a select turns into each other: what both have is kept, the rest begins afresh. */
import { ChoiceControl } from './ChoiceControl.tsx';
import type { Field } from './field.ts';
import { useForm, type ControlProps } from './formContext.ts';
import { startOf } from './starts.ts';

type Choice = Extract<Field, { kind: 'choice' }>;

/** The old section as another kind. */
export function asKind(field: Choice, word: string, old: unknown): unknown {
  const had = typeof old === 'object' && old !== null ? (old as Readonly<Record<string, unknown>>) : {};
  const entries = (field.options.get(word) ?? []).flatMap((one): [string, unknown][] => {
    if (one.key === field.by) return [[one.key, word]];
    if (Object.hasOwn(had, one.key)) return [[one.key, had[one.key]]];
    return one.isOptional ? [] : [[one.key, startOf(one)]];
  });
  return Object.fromEntries(entries);
}

export function KindControl({ field, path, name }: ControlProps) {
  const { change } = useForm();
  if (field.kind !== 'choice') return null;
  const noun = (name ?? field.label).toLowerCase();
  return (
    <div className="plant-grid">
      <ChoiceControl
        field={field}
        path={path}
        name={name}
        onConvert={(word) => change(path, (old) => asKind(field, word, old), `kind of ${noun}`)}
      />
    </div>
  );
}
