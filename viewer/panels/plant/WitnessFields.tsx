/** Witnesses: on the mirror by radius and angle, or at a position of their own. */
import { useDesign } from '../../state/designStore.ts';
import { withWitnessPlace } from '../../state/edits/changeKind.ts';
import { useForm } from './fields/formContext.ts';
import { isShown } from './fields/isShown.ts';
import { fieldsOf, FORMS } from './fields/readSchema.ts';
import { SelectControl } from './fields/SelectControl.tsx';
import { changeDesign, nameOfParts } from './formEdits.ts';
import { NameField } from './NameField.tsx';
import type { Parts } from './partsOf.ts';

export function WitnessFields({ parts }: { readonly parts: Parts<'witness'> }) {
  const { Control, parts: values } = useForm();
  const witnesses = useDesign((state) => state.current.file.witnesses);
  const free = new Set(parts.map(({ index }) => witnesses?.[index]?.position !== undefined));
  const [first] = parts;
  return (
    <div className="plant-grid">
      {first && parts.length === 1 && <NameField part={first} />}
      <SelectControl
        label="Stands"
        help="on the mirror’s surface or its continuation beyond the rim, facing as the mirror does; or anywhere in the tank"
        value={free.size > 1 ? '' : free.has(true) ? 'free' : 'mirror'}
        options={[
          { value: 'mirror', label: 'on the mirror' },
          { value: 'free', label: 'free in the tank' },
        ]}
        onChoose={(place) => {
          const { current } = useDesign.getState();
          return changeDesign(`place of ${nameOfParts(parts)}`, () =>
            parts.reduce(
              (file, { index }) => withWitnessPlace({ ...current, file }, index, place === 'free'),
              current.file,
            ),
          );
        }}
      />
      {fieldsOf(FORMS.witness)
        .filter(({ key, place }) => key !== 'name' && isShown(place, values))
        .map((field) => (
          <Control key={field.key} field={field} path={[field.key]} />
        ))}
    </div>
  );
}
