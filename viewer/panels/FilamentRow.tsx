/** One filament: its charge, and whether it is out of use. */
import { Undo2 } from 'lucide-react';
import { formatQuantity, type Filament, type Problem } from '../../engine/index.ts';
import { editDesign } from '../state/editDesign.ts';
import { withOwnValues, type FilamentSetFile, type OwnValues } from '../state/filamentEdits.ts';
import { EditField } from './EditField.tsx';
import { refusalText } from './refusalText.ts';

interface FilamentRowProps {
  readonly set: FilamentSetFile;
  readonly iSet: number;
  readonly filament: Filament;
}

export function FilamentRow({ set, iSet, filament }: FilamentRowProps) {
  const { name, number, charge, outOfUse } = filament;
  const own = set.exceptions?.find((exception) => exception.filament === number)?.charge;
  const edit = (what: string, values: OwnValues): readonly Problem[] =>
    editDesign(`${what} of ${name}`, (file) => withOwnValues(file, iSet, number, values));
  const commitCharge = (text: string): string | null => {
    const problems = edit('charge', { charge: text });
    // the path ends in the exception's place in the file, which means nothing here
    return refusalText(
      problems.map((problem) => (problem.path.endsWith('.charge') ? { ...problem, path: '' } : problem)),
      '',
    );
  };
  return (
    <tr data-out-of-use={outOfUse || undefined}>
      <th scope="row">{name}</th>
      <td>
        <div className="own-charge">
          <EditField
            label={`Charge of ${name}`}
            isLabelHidden
            value={own ?? formatQuantity(charge, 'mass', 'mg', 6)}
            onCommit={commitCharge}
          />
          {own !== undefined && (
            <button
              type="button"
              className="icon"
              aria-label={`Give ${name} the charge of its set again`}
              title="Use the charge of the set"
              onClick={() => edit('charge', { charge: undefined })}
            >
              <Undo2 aria-hidden="true" size={16} />
            </button>
          )}
        </div>
      </td>
      <td>
        <input
          type="checkbox"
          checked={outOfUse}
          aria-label={`${name} is out of use`}
          onChange={(event) => edit('use', { outOfUse: event.target.checked })}
        />
      </td>
    </tr>
  );
}
