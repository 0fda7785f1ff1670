/** The control for a field, by its kind. */
import { EitherControl } from './EitherControl.tsx';
import { EmissionControl } from './EmissionControl.tsx';
import type { ControlProps } from './formContext.ts';
import { GroupControl } from './GroupControl.tsx';
import { KindControl } from './KindControl.tsx';
import { ListControl } from './ListControl.tsx';
import { TextControl } from './TextControl.tsx';
import { TruthControl } from './TruthControl.tsx';
import { TupleControl } from './TupleControl.tsx';
import { WordsControl } from './WordsControl.tsx';

/** A change of its law keeps what fits, and more than the schema knows. */
const EMISSION = 'type.emission';

export function Control(props: ControlProps) {
  switch (props.field.kind) {
    case 'quantity':
    case 'text':
    case 'number':
      return <TextControl {...props} />;
    case 'words':
      return <WordsControl {...props} />;
    case 'truth':
      return <TruthControl {...props} />;
    case 'tuple':
      return <TupleControl {...props} />;
    case 'list':
      return <ListControl {...props} />;
    case 'group':
      return <GroupControl {...props} />;
    case 'either':
      return <EitherControl {...props} />;
    case 'choice':
      return props.field.place === EMISSION ? <EmissionControl {...props} /> : <KindControl {...props} />;
    case 'fixed':
      return null;
  }
}
