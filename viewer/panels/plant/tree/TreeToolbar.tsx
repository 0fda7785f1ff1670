/** The tree's buttons: add, duplicate, rename, delete, mark as out of use. */
import { Ban, Copy, Pencil, Trash2 } from 'lucide-react';
import { useState } from 'react';
import type { AddedKind } from '../../../state/edits/addPart.ts';
import { useSelection } from '../../../state/selection.ts';
import { MeshDialog, TableDialog } from '../dialogs.tsx';
import { add, deleteSelected, duplicateSelected, toggleOutOfUse } from './treeActions.ts';

interface TreeToolbarProps {
  readonly say: (refusal: string | null) => void;
  readonly onRename: () => void;
}

const ADDED: readonly { readonly value: AddedKind | 'table' | 'mesh'; readonly label: string }[] = [
  { value: 'set', label: 'Ring of filaments' },
  { value: 'table', label: 'Filaments from a table…' },
  { value: 'type', label: 'Filament type' },
  { value: 'obstacle', label: 'Obstacle' },
  { value: 'mesh', label: 'Obstacle from an STL file…' },
  { value: 'witness', label: 'Witness' },
];

export function TreeToolbar({ say, onRename }: TreeToolbarProps) {
  const parts = useSelection((state) => state.parts);
  const [dialog, setDialog] = useState<'table' | 'mesh' | null>(null);
  const isNone = parts.length === 0;
  const canMark = parts.some(({ kind }) => kind === 'filament' || kind === 'set' || kind === 'feed');
  const choose = (value: string): void => {
    if (value === 'table' || value === 'mesh') setDialog(value);
    else say(add(value as AddedKind));
  };
  return (
    <div className="tree-toolbar" role="toolbar" aria-label="Edit the plant">
      <select aria-label="Add a part" value="" onChange={(event) => choose(event.target.value)}>
        <option value="" disabled>
          + Add…
        </option>
        {ADDED.map(({ value, label }) => (
          <option key={value} value={value}>
            {label}
          </option>
        ))}
      </select>
      <button
        type="button"
        className="icon"
        disabled={isNone}
        aria-label="Duplicate"
        title="Duplicate (Ctrl+D)"
        onClick={() => say(duplicateSelected())}
      >
        <Copy aria-hidden="true" size={16} />
      </button>
      <button
        type="button"
        className="icon"
        disabled={isNone}
        aria-label="Rename"
        title="Rename (F2)"
        onClick={onRename}
      >
        <Pencil aria-hidden="true" size={16} />
      </button>
      <button
        type="button"
        className="icon"
        disabled={!canMark}
        aria-label="Out of use, or in use again"
        title="Out of use, or in use again (X)"
        onClick={() => say(toggleOutOfUse())}
      >
        <Ban aria-hidden="true" size={16} />
      </button>
      <button
        type="button"
        className="icon"
        disabled={isNone}
        aria-label="Delete"
        title="Delete (Delete)"
        onClick={() => say(deleteSelected())}
      >
        <Trash2 aria-hidden="true" size={16} />
      </button>
      {dialog === 'table' && <TableDialog onClose={() => setDialog(null)} />}
      {dialog === 'mesh' && <MeshDialog onClose={() => setDialog(null)} />}
    </div>
  );
}
