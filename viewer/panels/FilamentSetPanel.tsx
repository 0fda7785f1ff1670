/** One filament set: what its filaments carry, how many there are and where; and its single filaments. */
import { formatQuantity } from '../../engine/index.ts';
import { useDesign } from '../state/designStore.ts';
import { editDesign } from '../state/editDesign.ts';
import { withSetField, type FilamentSetFile } from '../state/filamentEdits.ts';
import { EditField } from './EditField.tsx';
import { FilamentList } from './FilamentList.tsx';
import { refusalText } from './refusalText.ts';

interface SetField {
  readonly key: string;
  readonly label: string;
  readonly noun: string;
  readonly value: string;
  /** whether the file holds a whole number and not a quantity */
  readonly isCount?: boolean;
}

/** What can be changed about the places of a set, by its arrangement. */
function placeFields(set: FilamentSetFile): SetField[] {
  const count = (key: string, label: string, value: number): SetField => ({
    key,
    label,
    noun: label.toLowerCase(),
    value: String(value),
    isCount: true,
  });
  switch (set.arrangement) {
    case 'ring':
      return [
        count('count', 'Number of filaments', set.count),
        { key: 'diameter', label: 'Ring diameter', noun: 'diameter', value: set.diameter },
        { key: 'height', label: 'Height', noun: 'height', value: set.height },
      ];
    case 'line':
      return [count('count', 'Number of filaments', set.count)];
    case 'grid':
      return [count('columns', 'Columns', set.columns), count('rows', 'Rows', set.rows)];
    case 'list':
      return [];
  }
}

/** The file's value for a typed text: a number where a count is due, else the text, for the engine to judge. */
function fileValue(text: string, isCount: boolean): unknown {
  return isCount && /^-?\d+(\.\d+)?$/.test(text) ? Number(text) : text;
}

interface FilamentSetPanelProps {
  readonly set: FilamentSetFile;
  readonly iSet: number;
}

export function FilamentSetPanel({ set, iSet }: FilamentSetPanelProps) {
  const plant = useDesign((state) => state.current.plant);
  const filaments = plant.filaments.filter((filament) => filament.set === iSet);
  const special = new Set(set.exceptions?.flatMap(({ filament, charge }) => (charge === undefined ? [] : [filament])));
  const usual = filaments.find(({ number }) => !special.has(number))?.charge;
  const charge = set.charge ?? (usual === undefined ? '' : formatQuantity(usual, 'mass', 'mg', 6));
  const commit = (key: string, noun: string, value: unknown): string | null =>
    refusalText(
      editDesign(`${noun} of ${set.name}`, (file) => withSetField(file, iSet, key, value)),
      `filaments[${iSet}].${key}`,
    );
  return (
    <div className="filament-set">
      <div role="group" aria-label={set.name}>
        <h3>
          {set.name} <small>{set.arrangement}</small>
        </h3>
        <div className="field-grid">
          <EditField label="Charge" value={charge} onCommit={(text) => commit('charge', 'charge', text)} />
          {placeFields(set).map(({ key, label, noun, value, isCount = false }) => (
            <EditField
              key={key}
              label={label}
              value={value}
              onCommit={(text) => commit(key, noun, fileValue(text, isCount))}
            />
          ))}
        </div>
        {special.size > 0 && (
          <p className="quiet">
            {special.size === 1 ? '1 filament has its own charge' : `${special.size} filaments have their own charges`}.
          </p>
        )}
      </div>
      <FilamentList set={set} iSet={iSet} filaments={filaments} />
    </div>
  );
}
