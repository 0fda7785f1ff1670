/** A filament type: loops or a bent wire, what hangs on it, and how it emits. */
import { useDesign } from '../../state/designStore.ts';
import { withPath } from '../../state/edits/changeKind.ts';
import { useForm } from './fields/formContext.ts';
import { inOrder } from './fields/inOrder.ts';
import { isShown } from './fields/isShown.ts';
import { fieldsOf, FORMS } from './fields/readSchema.ts';
import { SelectControl } from './fields/SelectControl.tsx';
import { changeDesign, nameOfParts } from './formEdits.ts';
import { NameField } from './NameField.tsx';
import type { Parts } from './partsOf.ts';

export function TypeFields({ parts }: { readonly parts: Parts<'type'> }) {
  const { Control, parts: values } = useForm();
  const types = useDesign((state) => state.current.file.filamentTypes);
  const bent = new Set(parts.map(({ name }) => types[name]?.path !== undefined));
  const [first] = parts;
  return (
    <div className="plant-grid">
      {first && parts.length === 1 && <NameField part={first} />}
      <SelectControl
        label="Made as"
        help="loops along a coil, or one wire bent along corners that you give"
        value={bent.size > 1 ? '' : bent.has(true) ? 'wire' : 'loops'}
        options={[
          { value: 'loops', label: 'loops along a coil' },
          { value: 'wire', label: 'a bent wire' },
        ]}
        onChoose={(made) =>
          changeDesign(`make of ${nameOfParts(parts)}`, (file) =>
            parts.reduce((next, { name }) => withPath(next, name, made === 'wire'), file),
          )
        }
      />
      {inOrder(fieldsOf(FORMS.type).filter(({ place }) => isShown(place, values))).map((field) => (
        <Control key={field.key} field={field} path={[field.key]} />
      ))}
    </div>
  );
}
