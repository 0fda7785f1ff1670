/** Save and Save as, with what came of it. */
import { Save, SaveAll } from 'lucide-react';
import { saveDesign, saveDesignAs, useSaved } from '../../state/fileDialogs.ts';
import './keep.css';

export function SaveButtons() {
  const { name, count } = useSaved();
  return (
    <>
      <button
        type="button"
        className="shorter"
        onClick={() => void saveDesign()}
        title="Save (Ctrl+S)"
        aria-keyshortcuts="Control+S"
      >
        <Save aria-hidden="true" size={16} /> <span>Save</span>
      </button>
      <button
        type="button"
        onClick={() => void saveDesignAs()}
        className="short"
        title="Save as, under another name (Ctrl+Shift+S)"
        aria-keyshortcuts="Control+Shift+S"
      >
        <SaveAll aria-hidden="true" size={16} /> <span>Save as</span>
      </button>
      <span className="visually-hidden" aria-live="polite">
        {name !== null && <span key={count}>Saved as {name}</span>}
      </span>
    </>
  );
}
