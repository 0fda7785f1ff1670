/** A text, a number or a quantity with its unit. */
import { useUnits } from '../../../state/units.ts';
import { DraftInput } from './DraftInput.tsx';
import { useForm, type ControlProps } from './formContext.ts';
import { shownText } from './shownText.ts';
import { typedValue } from './typedValue.ts';
import { useShared, VARIOUS } from './useValues.ts';

/** Places whose text runs over several lines. */
const LONG = new Set(['story']);

export function TextControl({ field, path, name }: ControlProps) {
  const { change, defaultText } = useForm();
  const units = useUnits();
  const shared = useShared(path);
  const shown = (text: string): string =>
    field.kind === 'quantity' ? shownText(text, field.dimension, field.place, units) : text;
  const isGiven = shared !== undefined && shared !== VARIOUS;
  const inFile = isGiven ? String(shared as string | number) : '';
  const value = shown(inFile);
  const set = (text: string): string | null =>
    change(path, () => typedValue(field, text), (name ?? field.label).toLowerCase());
  const standard = defaultText(field);
  return (
    <DraftInput
      label={field.label}
      name={name}
      help={helpOf(field.help, value, inFile, field.isOptional ? standard : undefined, shown)}
      value={value}
      placeholder={shared === VARIOUS ? 'various' : standard === undefined ? exampleOf(field.example) : shown(standard)}
      isLong={LONG.has(field.place)}
      onCommit={set}
      onClear={field.isOptional && (isGiven || shared === VARIOUS) ? () => set('') : null}
    />
  );
}

const exampleOf = (example: string | undefined): string | undefined =>
  example === undefined ? undefined : `such as ${example}`;

/** The description, what stands in the file if it is written otherwise, and the default. */
function helpOf(
  help: string,
  value: string,
  inFile: string,
  standard: string | undefined,
  shown: (text: string) => string,
): string {
  const written = value === inFile ? '' : `; in the file ${inFile}`;
  return `${help}${written}${standard === undefined ? '' : `; ${shown(standard)} unless given`}`;
}
