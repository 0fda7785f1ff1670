/** A section of several kinds, such as an emission law: a select converts it, its fields follow. */
import type { ReactNode } from 'react';
import { valueAt } from '../../../state/edits/path.ts';
import { useForm, type ControlProps } from './formContext.ts';
import { inOrder } from './inOrder.ts';
import { isShown } from './isShown.ts';
import { SelectControl } from './SelectControl.tsx';
import { sharedFields } from './sharedFields.ts';

interface ChoiceControlProps extends ControlProps {
  /** turns the parts into another kind; answers why not, or null if it was done */
  readonly onConvert: (word: string) => string | null;
  /** kinds that cannot be chosen from here */
  readonly except?: readonly string[];
  /** fields that are edited in another way than their kind suggests */
  readonly replaced?: Readonly<Record<string, ReactNode>>;
}

export function ChoiceControl({ field, path, onConvert, except = [], replaced = {} }: ChoiceControlProps) {
  const { Control, parts } = useForm();
  if (field.kind !== 'choice') return null;
  const words = [...new Set(parts.map((part) => String(valueAt(part, [...path, field.by]))))];
  const [word = ''] = words;
  const select = field.options.get(word)?.find(({ key }) => key === field.by);
  const fields = sharedFields(field, words).filter(({ key, place }) => key !== field.by && isShown(place, parts));
  return (
    <>
      <SelectControl
        label={select?.label ?? field.label}
        help={select?.help ?? field.help}
        value={words.length === 1 ? word : ''}
        options={[...field.options.keys()]
          .filter((option) => option === word || !except.includes(option))
          .map((option) => ({ value: option, label: option }))}
        onChoose={onConvert}
      />
      {inOrder(fields).map((one) =>
        Object.hasOwn(replaced, one.key) ? (
          replaced[one.key]
        ) : (
          <Control key={one.key} field={one} path={[...path, one.key]} />
        ),
      )}
    </>
  );
}
