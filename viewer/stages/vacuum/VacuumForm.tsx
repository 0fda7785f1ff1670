/** What the design says of the vacuum, as a form: the gas of the shot, or the system that pumps the tank. */
import { FORMS, fieldsOf } from '../../panels/plant/fields/readSchema.ts';
import { inOrder } from '../../panels/plant/fields/inOrder.ts';
import { useForm } from '../../panels/plant/fields/formContext.ts';
import { PartsForm } from '../../panels/plant/PartsForm.tsx';
import type { Part } from '../../state/selection.ts';

const VACUUM: readonly Part[] = [{ kind: 'vacuum' }];
const SYSTEM = 'system';

/** Fields of the vacuum, all but those of its pumping system. */
function GasFields() {
  const { Control } = useForm();
  const fields = inOrder(fieldsOf(FORMS.vacuum).filter(({ key }) => key !== SYSTEM));
  return (
    <div className="plant-grid">
      {fields.map((field) => (
        <Control key={field.key} field={field} path={[field.key]} />
      ))}
    </div>
  );
}

export function GasForm() {
  return <PartsForm parts={VACUUM} titleId="vacuum-form-title" title="Gas around the shot" fields={<GasFields />} />;
}
