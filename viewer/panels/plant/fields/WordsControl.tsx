/** One of a few words of the schema; choosing the default leaves it out of the file again. */
import { useForm, type ControlProps } from './formContext.ts';
import { SelectControl } from './SelectControl.tsx';
import { useShared, VARIOUS } from './useValues.ts';

export function WordsControl({ field, path, name }: ControlProps) {
  const { change } = useForm();
  const shared = useShared(path);
  if (field.kind !== 'words') return null;
  const { fallback } = field;
  const value = shared === VARIOUS ? '' : String((shared ?? fallback ?? '') as string);
  return (
    <SelectControl
      label={field.label}
      name={name}
      help={field.help}
      value={value}
      options={field.words.map((word) => ({ value: word, label: word }))}
      onChoose={(word) => change(path, () => word, field.label.toLowerCase())}
    />
  );
}
