/** A value that is one of several kinds: a named or an own direction, one number or a list of them. */
import type { Field } from './field.ts';
import { useForm, type ControlProps } from './formContext.ts';
import { SelectControl, type SelectOption } from './SelectControl.tsx';
import { startOf } from './starts.ts';
import { useShared, VARIOUS } from './useValues.ts';
import { ALTERNATIVES, lookUp } from './words.ts';

/** Value of the select for a kind that is no word. */
const own = (i: number): string => `#${i}`;
const DEFAULT = '#default';

export function EitherControl({ field, path, name }: ControlProps) {
  const { Control, change, parts } = useForm();
  const shared = useShared(path);
  if (field.kind !== 'either') return null;
  const value = field.isOptional ? (shared ?? field.fallback) : shared;
  const chosen = field.options.find((option) => holds(option, value));
  const title = name ?? field.label;
  const options: SelectOption[] = field.options.flatMap((option, i) =>
    option.kind === 'words'
      ? option.words.map((word) => ({ value: word, label: word }))
      : [{ value: own(i), label: alternativeLabel(field, option) }],
  );
  if (field.isOptional && field.fallback === undefined) options.unshift({ value: DEFAULT, label: 'as usual' });
  const present =
    shared === VARIOUS
      ? ''
      : value === undefined
        ? DEFAULT
        : chosen?.kind === 'words'
          ? String(value as string)
          : own(chosen ? field.options.indexOf(chosen) : -1);
  const choose = (word: string): string | null => {
    const option = word.startsWith('#') ? field.options[Number(word.slice(1))] : undefined;
    const next = (old: unknown): unknown =>
      word === DEFAULT ? undefined : option ? converted(option, old, parts[0]) : word;
    return change(path, next, title.toLowerCase());
  };
  return (
    <div className="plant-either">
      <SelectControl
        label={field.label}
        name={name}
        help={field.help}
        value={present}
        options={options}
        onChoose={choose}
      />
      {chosen && chosen.kind !== 'words' && shared !== VARIOUS && (
        <Control field={withDefault(chosen, field)} path={path} name={title} />
      )}
    </div>
  );
}

/** One kind of a value, with the default of the whole. */
function withDefault(option: Field, { fallback, isOptional }: Field): Field {
  const isDefault = option.kind === 'number' && fallback !== undefined;
  return isDefault ? { ...option, fallback, isOptional } : option;
}

function holds(option: Field, value: unknown): boolean {
  switch (option.kind) {
    case 'words':
      return typeof value === 'string';
    case 'number':
      return typeof value === 'number';
    case 'tuple':
    case 'list':
      return Array.isArray(value);
    case 'group':
      return typeof value === 'object' && value !== null && !Array.isArray(value);
    default:
      return false;
  }
}

function alternativeLabel(field: Field, option: Field): string {
  if (option.kind === 'list') return 'loop by loop';
  if (option.kind === 'number') return 'all loops alike';
  return lookUp(ALTERNATIVES, field.place) ?? option.label;
}

/** The old value in another kind, as far as it fits. */
function converted(option: Field, old: unknown, part: unknown): unknown {
  const loops = Number((part as { loops?: number } | undefined)?.loops ?? 1);
  if (option.kind === 'list') return Array.from({ length: loops }, () => (typeof old === 'number' ? old : 1));
  if (option.kind === 'number' && Array.isArray(old))
    return Math.round(old.reduce((sum: number, n) => sum + Number(n), 0) / old.length);
  return startOf(option);
}
