/** What the design says of the vacuum, as a form: the gas of the shot, or the system that pumps the tank. */
import { FORMS, fieldsOf } from '../../panels/plant/fields/readSchema.ts';
import { inOrder } from '../../panels/plant/fields/inOrder.ts';
import { useForm } from '../../panels/plant/fields/formContext.ts';
import { PartsForm } from '../../panels/plant/PartsForm.tsx';
import { MixtureField } from './gas/MixtureField.tsx';
import { useDesign } from '../../state/designStore.ts';
import type { Part } from '../../state/selection.ts';

const VACUUM: readonly Part[] = [{ kind: 'vacuum' }];
const SYSTEM = 'system';
const MIXTURE = 'mixture';

/** Fields of the vacuum, all but its pumping system; the mixture has a field of its own. */
function GasFields() {
  const { Control } = useForm();
  const fields = inOrder(fieldsOf(FORMS.vacuum).filter(({ key }) => key !== SYSTEM && key !== MIXTURE));
  return (
    <div className="plant-grid">
      {fields.map((field) => (
        <Control key={field.key} field={field} path={[field.key]} />
      ))}
    </div>
  );
}

export function GasForm() {
  return (
    <PartsForm parts={VACUUM} titleId="vacuum-form-title" title="Gas around the shot" fields={<GasFields />}>
      <MixtureField />
    </PartsForm>
  );
}

const SYSTEM_FIELD = fieldsOf(FORMS.vacuum).find(({ key }) => key === SYSTEM);
const GLOW = 'glow';

/** Fields of the pumping system, all but those of the glow discharge. */
function SystemFields() {
  const { Control } = useForm();
  const fields = inOrder(fieldsOf(SYSTEM_FIELD).filter(({ key }) => key !== GLOW));
  return (
    <div className="plant-grid">
      {fields.map((field) => (
        <Control key={field.key} field={field} path={[SYSTEM, field.key]} />
      ))}
    </div>
  );
}

function GlowFields() {
  const { Control } = useForm();
  const field = fieldsOf(SYSTEM_FIELD).find(({ key }) => key === GLOW);
  return field && <Control field={field} path={[SYSTEM, GLOW]} />;
}

/** Whether the design describes a pumping system; its fields mean nothing before. */
const useHasSystem = (): boolean => useDesign(({ current }) => current.plant.vacuum.system !== undefined);

export function SystemForm() {
  return useHasSystem() ? (
    <PartsForm parts={VACUUM} titleId="vacuum-form-title" title="Pumping system" fields={<SystemFields />} />
  ) : (
    <GasForm />
  );
}

export function GlowForm() {
  return useHasSystem() ? (
    <PartsForm parts={VACUUM} titleId="vacuum-form-title" title="Glow discharge" fields={<GlowFields />} />
  ) : (
    <GasForm />
  );
}
