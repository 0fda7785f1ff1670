/** Makes a filament set of a pasted or chosen table, or replaces the filaments of one; faults are told by row and column. */
import { FileUp } from 'lucide-react';
import { useDeferredValue, useId, useMemo, useState } from 'react';
import { formatProblem, openPlantFile } from '../../../engine/index.ts';
import { useDesign } from '../../state/designStore.ts';
import type { Edited } from '../../state/edits/parts.ts';
import { withNewTable, withTable } from '../../state/edits/replaceTable.ts';
import { filamentTableText, tableText } from '../../state/edits/tableText.ts';
import { useUnits } from '../../state/units.ts';
import { chooseFile } from './chooseFile.ts';
import { Dialog } from './Dialog.tsx';
import { SelectControl } from './fields/SelectControl.tsx';
import { makeEdit } from './formEdits.ts';
import { previewTable, type TableFault } from './tableFaults.ts';
import { TablePreviewView } from './TablePreviewView.tsx';

interface FilamentTablePasteProps {
  /** the set whose filaments are replaced; a new set unless given */
  readonly iSet?: number;
  readonly onClose: () => void;
}

const EXAMPLE = 'name,x,y,z,charge,feed\n,mm,mm,mm,mg,\nF1,900,0,850,268,A\nF2,0,900,850,268,A';
/** Faults listed; more are counted. */
const MOST_FAULTS = 30;

function sentence({ row, column, message }: TableFault): string {
  const place = row === null ? '' : column === null ? `Row ${row}: ` : `Row ${row}, column ${column}: `;
  return `${place}${message}`;
}

/** What the engine says against the plant with the table in it. */
function placeFaults(edit: Edited): string[] {
  if (!edit.ok) return [edit.reason];
  const opened = openPlantFile(edit.file, useDesign.getState().current.files);
  return opened.ok ? [] : opened.problems.map((problem) => formatProblem(problem));
}

export function FilamentTablePaste({ iSet, onClose }: FilamentTablePasteProps) {
  const { file, plant } = useDesign((state) => state.current);
  const units = useUnits();
  const id = useId();
  const types = Object.keys(file.filamentTypes);
  const [type, setType] = useState(types[0] ?? '');
  const [text, setText] = useState(() =>
    iSet === undefined
      ? ''
      : filamentTableText(
          plant.filaments.filter(({ set }) => set === iSet),
          units.length,
        ),
  );
  const [refusal, setRefusal] = useState<string | null>(null);
  const read = useDeferredValue(text);
  const preview = useMemo(() => previewTable(read), [read]);
  const edit = iSet === undefined ? withNewTable(file, type, text) : withTable(file, iSet, text);
  const isEmpty = read.trim() === '';
  const faults = isEmpty
    ? []
    : [...preview.faults.map(sentence), ...(preview.faults.length > 0 ? [] : placeFaults(edit))];
  const name = iSet === undefined ? null : (file.filaments[iSet]?.name ?? '');
  const choose = async (): Promise<void> => {
    try {
      const chosen = await chooseFile('Filament list', '.csv');
      if (chosen) setText(tableText(chosen.bytes));
    } catch (error) {
      setRefusal(`The file cannot be read: ${String(error)}`);
    }
  };
  const put = (): void => {
    const refused = makeEdit(name === null ? 'filament set from a table' : `filaments of ${name}`, edit);
    setRefusal(refused);
    if (refused === null) onClose();
  };
  return (
    <Dialog title={name === null ? 'Filament set from a table' : `Filaments of ${name} from a table`} onClose={onClose}>
      <p>
        A heading row, a unit row, then a row for each filament. The columns x, y and z are needed; name, charge, feed
        and axis_x, axis_y, axis_z may be there. Cells are parted by commas, semicolons or tabs; a decimal comma needs
        semicolons or tabs.
      </p>
      {name !== null && (
        <p className="quiet">
          Charges and use that single filaments of {name} have of their own belonged to the old filaments and go.
        </p>
      )}
      <div className="plant-actions">
        <button type="button" onClick={() => void choose()}>
          <FileUp aria-hidden="true" size={16} /> Choose a CSV file…
        </button>
        {isEmpty && (
          <button type="button" onClick={() => setText(EXAMPLE)}>
            Start from an example
          </button>
        )}
      </div>
      <label htmlFor={`${id}-text`}>Table</label>
      <textarea
        id={`${id}-text`}
        className="plant-text"
        rows={7}
        spellCheck={false}
        value={text}
        aria-describedby={`${id}-faults`}
        onChange={(event) => {
          setText(event.target.value);
          setRefusal(null);
        }}
      />
      {name === null && (
        <SelectControl
          label="Type of its filaments"
          help="the filament type that all of them are of"
          value={type}
          options={types.map((word) => ({ value: word, label: word }))}
          onChoose={(word) => {
            setType(word);
            return null;
          }}
        />
      )}
      <div id={`${id}-faults`} aria-live="polite">
        {!isEmpty && faults.length === 0 && <p>{preview.filamentCount} filaments, no faults.</p>}
        {faults.length > 0 && (
          <>
            <p className="plant-fault-count">{faults.length === 1 ? 'One fault' : `${faults.length} faults`}</p>
            <ul className="plant-faults">
              {faults.slice(0, MOST_FAULTS).map((fault, i) => (
                <li key={i}>{fault}</li>
              ))}
              {faults.length > MOST_FAULTS && <li>… and {faults.length - MOST_FAULTS} more</li>}
            </ul>
          </>
        )}
      </div>
      {!isEmpty && preview.rows.length > 0 && <TablePreviewView {...preview} />}
      <div className="plant-actions">
        <button type="button" disabled={isEmpty || faults.length > 0 || read !== text} onClick={put}>
          {name === null ? 'Add the set' : 'Replace the filaments'}
        </button>
      </div>
      <p className="field-refusal" aria-live="polite">
        {refusal}
      </p>
    </Dialog>
  );
}
