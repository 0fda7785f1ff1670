/** The head of the page: name, stages, and what can be done with the design as a whole. */
import { BookOpenText, FolderOpen } from 'lucide-react';
import { lazy, Suspense } from 'react';
import { chooseFiles } from '../state/fileDialogs.ts';
import { useResult } from '../state/resultStore.ts';
import { HistoryButtons } from './HistoryButtons.tsx';
import { ThemeSwitch } from './home/ThemeSwitch.tsx';
import { UnitsMenu } from './home/UnitsMenu.tsx';
import { CopyLink } from './keep/CopyLink.tsx';
import { RecentMenu } from './keep/RecentMenu.tsx';
import { SaveButtons } from './keep/SaveButtons.tsx';
import { PresetSelect } from './PresetSelect.tsx';

const ExportMenu = lazy(async () => ({ default: (await import('../export/ExportMenu.tsx')).ExportMenu }));

export function TopBar({ onAssumptions }: { readonly onAssumptions: () => void }) {
  const coat = useResult((state) => state.coat);
  return (
    <header className="top-bar">
      <h1>Evenfall</h1>
      <nav aria-label="Stages">
        <a href="#layout" aria-current="page">
          Layout
        </a>
      </nav>
      <div className="top-actions" role="toolbar" aria-label="Design">
        <PresetSelect />
        <RecentMenu />
        <button type="button" onClick={() => void chooseFiles()} aria-keyshortcuts="Control+O">
          <FolderOpen aria-hidden="true" size={16} /> Open
        </button>
        <SaveButtons />
        <CopyLink />
        <Suspense>{coat && <ExportMenu coat={coat} />}</Suspense>
        <HistoryButtons />
        <UnitsMenu />
        <ThemeSwitch />
        <button type="button" className="short" title="Assumptions and cautions" onClick={onAssumptions}>
          <BookOpenText aria-hidden="true" size={16} /> <span>Assumptions</span>
        </button>
      </div>
    </header>
  );
}
