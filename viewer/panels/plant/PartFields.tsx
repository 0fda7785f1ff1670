/** The fields of a form, by the kind of the selected parts. */
import type { Part } from '../../state/selection.ts';
import { FILAMENT_FIELDS, FORMS } from './fields/readSchema.ts';
import { useForm } from './fields/formContext.ts';
import { FeedFields } from './FeedFields.tsx';
import { FilamentFields } from './FilamentFields.tsx';
import { partsOf } from './partsOf.ts';
import { ObstacleFields } from './ObstacleFields.tsx';
import { SetFields } from './SetFields.tsx';
import { TypeFields } from './TypeFields.tsx';
import { WitnessFields } from './WitnessFields.tsx';

export function PartFields({ parts }: { readonly parts: readonly Part[] }) {
  const { Control } = useForm();
  const kind = parts[0]?.kind;
  switch (kind) {
    case undefined:
      return [FORMS.name, FORMS.story].map((field) => <Control key={field.key} field={field} path={[field.key]} />);
    case 'type':
      return <TypeFields parts={partsOf(parts, 'type')} />;
    case 'set':
      return <SetFields parts={partsOf(parts, 'set')} />;
    case 'filament':
      return <FilamentFields parts={partsOf(parts, 'filament')} fields={FILAMENT_FIELDS} />;
    case 'feed':
      return <FeedFields parts={partsOf(parts, 'feed')} />;
    case 'obstacle':
      return <ObstacleFields parts={partsOf(parts, 'obstacle')} />;
    case 'witness':
      return <WitnessFields parts={partsOf(parts, 'witness')} />;
    default:
      return <Control field={{ ...FORMS[kind], label: '' }} path={[]} />;
  }
}
