/** The page with stages made for the test: the real first one, and others that count, fail to load, and throw. */
import '../../../viewer/styles.css';
import '../../../viewer/styles/buttons.css';
import '../../../viewer/styles/numbers.css';
import '../../../viewer/styles/dialog.css';
import '../../../viewer/styles/print.css';
import { StrictMode } from 'react';
import { createRoot } from 'react-dom/client';
import { App } from '../../../viewer/App.tsx';
import { stages as real, type Stage } from '../../../viewer/stages/stages.ts';
import { followStage } from '../../../viewer/stages/stageStore.ts';
import { startKeeping } from '../../../viewer/state/keep/startKeeping.ts';
import { followResult } from '../../../viewer/state/probeStore.ts';
import { followDesign } from '../../../viewer/state/resultStore.ts';
import { faults } from './faults.ts';

const stages: readonly Stage[] = [
  ...real.slice(0, 1),
  {
    key: 'pieces',
    title: 'Pieces',
    question: 'Do the shared pieces hold together?',
    load: async () => (await import('./PiecesStage.tsx')).PiecesStage,
  },
  {
    key: 'missing',
    title: 'Missing',
    question: 'What if the code does not come?',
    load: async () => {
      if (faults.isOffline) throw new Error('Failed to fetch dynamically imported module');
      return (await import('./PiecesStage.tsx')).PiecesStage;
    },
  },
  {
    key: 'broken',
    title: 'Broken',
    question: 'What if a stage throws?',
    load: async () => (await import('./BrokenStage.tsx')).BrokenStage,
  },
];

followStage(stages);
await startKeeping();
followResult();
followDesign();
createRoot(document.getElementById('root')!).render(
  <StrictMode>
    <App stages={stages} />
  </StrictMode>,
);
