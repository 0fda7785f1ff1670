/** The head of the page: name, what can be done with the design as a whole, and the stages. */
import { FolderOpen } from 'lucide-react';
import { StageRow } from '../stages/StageRow.tsx';
import type { Stage } from '../stages/stages.ts';
import { chooseFiles } from '../state/fileDialogs.ts';
import { AssumptionsButton } from './AssumptionsButton.tsx';
import { ExportButton } from './ExportButton.tsx';
import { HistoryButtons } from './HistoryButtons.tsx';
import { ThemeSwitch } from './home/ThemeSwitch.tsx';
import { UnitsMenu } from './home/UnitsMenu.tsx';
import { CopyLink } from './keep/CopyLink.tsx';
import { RecentMenu } from './keep/RecentMenu.tsx';
import { SaveButtons } from './keep/SaveButtons.tsx';
import { PresetSelect } from './PresetSelect.tsx';

export function TopBar({ stages }: { readonly stages: readonly Stage[] }) {
  return (
    <header className="top-bar">
      <h1>Evenfall</h1>
      <div className="top-actions" role="toolbar" aria-label="Design">
        <PresetSelect />
        <RecentMenu />
        <button type="button" className="shorter" onClick={() => void chooseFiles()} aria-keyshortcuts="Control+O">
          <FolderOpen aria-hidden="true" size={16} /> <span>Open</span>
        </button>
        <SaveButtons />
        <CopyLink />
        <ExportButton />
        <HistoryButtons />
        <UnitsMenu />
        <ThemeSwitch />
        <AssumptionsButton />
      </div>
      <StageRow stages={stages} />
    </header>
  );
}
