/** How the vapour leaves: the law and what it needs, a measured table row by row. */
import type { Emission } from '../../../state/edits/changeKind.ts';
import { emissionOfLaw } from '../../../state/edits/changeKind.ts';
import { AngleTable } from './AngleTable.tsx';
import { ChoiceControl } from './ChoiceControl.tsx';
import { useForm, type ControlProps } from './formContext.ts';

export function EmissionControl({ field, path, name }: ControlProps) {
  const { change } = useForm();
  return (
    <fieldset className="plant-group" data-help={field.help}>
      <legend>{field.label}</legend>
      <div className="plant-grid">
        <ChoiceControl
          field={field}
          path={path}
          name={name}
          onConvert={(law) =>
            change(path, (old) => emissionOfLaw(old as Emission, law as Emission['law']), 'emission law')
          }
          replaced={{ angles: <AngleTable key="angles" path={path} /> }}
        />
      </div>
    </fieldset>
  );
}
