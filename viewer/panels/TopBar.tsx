/** The head of the page: name, stages, and what can be done with the design as a whole. */
import { BookOpenText, FolderOpen, Save } from 'lucide-react';
import { useState } from 'react';
import { chooseFiles, saveDesign } from '../state/fileDialogs.ts';
import { HistoryButtons } from './HistoryButtons.tsx';
import { PresetSelect } from './PresetSelect.tsx';

export function TopBar({ onAssumptions }: { readonly onAssumptions: () => void }) {
  const [saved, setSaved] = useState('');
  const save = async (): Promise<void> => {
    const name = await saveDesign();
    setSaved(name === null ? '' : `Saved as ${name}`);
  };
  return (
    <header className="top-bar">
      <h1>Evenfall</h1>
      <nav aria-label="Stages">
        <a href="#layout" aria-current="page">
          Layout
        </a>
      </nav>
      <div className="top-actions">
        <PresetSelect />
        <button type="button" onClick={() => void chooseFiles()}>
          <FolderOpen aria-hidden="true" size={16} /> Open
        </button>
        <button type="button" onClick={() => void save()}>
          <Save aria-hidden="true" size={16} /> Save
        </button>
        <HistoryButtons />
        <button type="button" onClick={onAssumptions}>
          <BookOpenText aria-hidden="true" size={16} /> Assumptions
        </button>
        <span className="visually-hidden" aria-live="polite">
          {saved}
        </span>
      </div>
    </header>
  );
}
