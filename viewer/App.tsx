/** The page. */
import { useState } from 'react';
import { AssumptionsDialog } from './panels/AssumptionsDialog.tsx';
import { Bench } from './panels/Bench.tsx';
import { ComputeNotice } from './panels/ComputeNotice.tsx';
import { DropTarget } from './panels/DropTarget.tsx';
import { Announcer } from './panels/home/Announcer.tsx';
import { GlobalKeys } from './panels/home/GlobalKeys.tsx';
import { Hints } from './panels/home/Hints.tsx';
import { KeepBars } from './panels/keep/KeepBars.tsx';
import { ProblemsPanel } from './panels/ProblemsPanel.tsx';
import { TopBar } from './panels/TopBar.tsx';
import { Verdict } from './panels/Verdict.tsx';

export function App() {
  const [showsAssumptions, setShowsAssumptions] = useState(false);
  return (
    <div className="page">
      <TopBar onAssumptions={() => setShowsAssumptions(true)} />
      <main id="layout">
        <div className="head">
          <KeepBars />
          <Verdict />
          <ComputeNotice />
          <ProblemsPanel />
        </div>
        <Bench />
      </main>
      <footer>
        <Hints />
        <p>
          Vacuum, kiloamperes, kilovolts, hot metal: local codes and licensed practice come first. Evenfall only
          advises.
        </p>
      </footer>
      <AssumptionsDialog isOpen={showsAssumptions} onClose={() => setShowsAssumptions(false)} />
      <GlobalKeys />
      <Announcer />
      <DropTarget />
    </div>
  );
}
