/** The page: its head, the stage that is shown, and what works everywhere. */
import { DropTarget } from './panels/DropTarget.tsx';
import { Footer } from './panels/Footer.tsx';
import { Announcer } from './panels/home/Announcer.tsx';
import { GlobalKeys } from './panels/home/GlobalKeys.tsx';
import { KeepBars } from './panels/keep/KeepBars.tsx';
import './panels/page.css';
import { TopBar } from './panels/TopBar.tsx';
import { Later } from './stages/Later.tsx';
import { StageOutlet } from './stages/StageOutlet.tsx';
import type { Stage } from './stages/stages.ts';

export function App({ stages }: { readonly stages: readonly Stage[] }) {
  return (
    <div className="page">
      <TopBar stages={stages} />
      <main>
        <KeepBars />
        <Later>
          <StageOutlet stages={stages} />
        </Later>
      </main>
      <Footer />
      <GlobalKeys />
      <Announcer />
      <DropTarget />
    </div>
  );
}
