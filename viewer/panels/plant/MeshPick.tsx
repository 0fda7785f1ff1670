/** Takes an obstacle from an STL file: shows how large it comes out before it is put into the plant. */
import { FileUp } from 'lucide-react';
import { useState } from 'react';
import { useDesign } from '../../state/designStore.ts';
import { addMesh, withMesh, type MeshUnit } from '../../state/edits/addPart.ts';
import { base64Of } from '../../state/edits/base64.ts';
import { edited, nameOfPart } from '../../state/edits/parts.ts';
import type { Part } from '../../state/selection.ts';
import { shownQuantity, useUnits } from '../../state/units.ts';
import { chooseFile, type ChosenFile } from './chooseFile.ts';
import { Dialog } from './Dialog.tsx';
import { fieldsOf, FORMS } from './fields/readSchema.ts';
import { SelectControl } from './fields/SelectControl.tsx';
import { makeEdit } from './formEdits.ts';
import { meshExtent } from './meshExtent.ts';

const UNIT = fieldsOf(FORMS.obstacle, 'mesh').find(({ key }) => key === 'unit');
const UNITS = UNIT?.kind === 'words' ? UNIT.words : [];

interface MeshPickProps {
  /** the obstacle that takes its shape from the file; a new one unless given */
  readonly iObstacle?: number;
  readonly onClose: () => void;
}

/** Puts the mesh into the plant; answers why not, or null. */
function place({ name, bytes }: ChosenFile, unit: MeshUnit, iObstacle: number | undefined): string | null {
  const { current } = useDesign.getState();
  const data = base64Of(bytes);
  if (iObstacle === undefined) {
    const added = addMesh(current, name.replace(/\.stl$/i, '').slice(0, 80) || 'mesh', data, unit);
    return makeEdit(`obstacle from ${name}`, edited(added.file, added.part));
  }
  const part: Part = { kind: 'obstacle', index: iObstacle };
  return makeEdit(`mesh of ${nameOfPart(current, part)}`, edited(withMesh(current.file, iObstacle, data, unit), part));
}

export function MeshPick({ iObstacle, onClose }: MeshPickProps) {
  const units = useUnits();
  const [chosen, setChosen] = useState<ChosenFile | null>(null);
  const [unit, setUnit] = useState<MeshUnit>('mm');
  const [refusal, setRefusal] = useState<string | null>(null);
  const extent = chosen && meshExtent(chosen.bytes, unit);
  const choose = async (): Promise<void> => {
    try {
      const file = await chooseFile('Mesh', '.stl');
      if (file) setChosen(file);
      setRefusal(null);
    } catch (error) {
      setRefusal(`The file cannot be read: ${String(error)}`);
    }
  };
  const put = (): void => {
    const refused = chosen && place(chosen, unit, iObstacle);
    setRefusal(refused);
    if (chosen && refused === null) onClose();
  };
  return (
    <Dialog title={iObstacle === undefined ? 'Obstacle from an STL file' : 'Shape from an STL file'} onClose={onClose}>
      <p>
        The mesh becomes a part of the design, which stays one file. Its numbers have no unit in the STL file: say which
        they are in, and compare the size below with the real thing.
      </p>
      <div className="plant-actions">
        <button type="button" onClick={() => void choose()}>
          <FileUp aria-hidden="true" size={16} /> Choose an STL file…
        </button>
        {chosen && <span>{chosen.name}</span>}
      </div>
      <div className="plant-grid">
        <SelectControl
          label={UNIT?.label ?? ''}
          help={UNIT?.help ?? ''}
          value={unit}
          options={UNITS.map((word) => ({ value: word, label: word }))}
          onChoose={(word) => {
            setUnit(word as MeshUnit);
            return null;
          }}
        />
      </div>
      <p aria-live="polite">
        {extent &&
          (extent.ok
            ? `${extent.triangles} triangles, ${extent.size.map((side) => shownQuantity(units, 'length', side, 4)).join(' × ')}.`
            : `${extent.reason}.`)}
      </p>
      <div className="plant-actions">
        <button type="button" disabled={!extent?.ok} onClick={put}>
          {iObstacle === undefined ? 'Add the obstacle' : 'Use this shape'}
        </button>
      </div>
      <p className="field-refusal" aria-live="polite">
        {refusal}
      </p>
    </Dialog>
  );
}
