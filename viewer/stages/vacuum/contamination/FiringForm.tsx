/** How long the film grows: a field of the design that no part of the plant has. */
import { useDesign } from '../../../state/designStore.ts';
import { withValue } from '../../../state/edits/path.ts';
import { EditField } from '../../../panels/EditField.tsx';
import { changeDesign } from '../../../panels/plant/formEdits.ts';

const PATH = ['firing', 'duration'] as const;

export function FiringForm() {
  const { file, plant } = useDesign((state) => state.current);
  return (
    <section className="panel vacuum-firing" aria-label="Firing">
      <EditField
        label="Film grows for"
        value={file.firing?.duration ?? `${plant.firing.duration} s`}
        onCommit={(text) =>
          changeDesign('duration of the firing', (old) => withValue(old, PATH, text === '' ? undefined : text))
        }
      />
    </section>
  );
}
