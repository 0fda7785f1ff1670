/** The page. */
import { useState } from 'react';
import { ProfileChart } from './charts/ProfileChart.tsx';
import { AssumptionsDialog } from './panels/AssumptionsDialog.tsx';
import { ComputeNotice } from './panels/ComputeNotice.tsx';
import { DropTarget } from './panels/DropTarget.tsx';
import { FilamentSets } from './panels/FilamentSets.tsx';
import { MassBudget } from './panels/MassBudget.tsx';
import { ProblemsPanel } from './panels/ProblemsPanel.tsx';
import { Statistics } from './panels/Statistics.tsx';
import { TopBar } from './panels/TopBar.tsx';
import { Verdict } from './panels/Verdict.tsx';
import { SceneFigure } from './scene/SceneFigure.tsx';
import { useResult } from './state/resultStore.ts';

export function App() {
  const coat = useResult((state) => state.coat);
  const [showsAssumptions, setShowsAssumptions] = useState(false);
  return (
    <div className="page">
      <TopBar onAssumptions={() => setShowsAssumptions(true)} />
      <main id="layout">
        <div className="head">
          <Verdict />
          <ComputeNotice />
          <ProblemsPanel />
        </div>
        <div className="picture">
          <SceneFigure />
          {coat && <ProfileChart coat={coat} />}
        </div>
        <div className="side">
          <Statistics />
          <FilamentSets />
          <MassBudget />
        </div>
      </main>
      <footer>
        Vacuum vessel, kiloamperes, kilovolts, hot filaments: follow local codes and licensed practice. Evenfall advises
        and does not control equipment.
      </footer>
      <AssumptionsDialog isOpen={showsAssumptions} onClose={() => setShowsAssumptions(false)} />
      <DropTarget />
    </div>
  );
}
