import './styles.css';
import './styles/buttons.css';
import './styles/numbers.css';
import './styles/dialog.css';
import './styles/print.css';
import { startTransition, StrictMode } from 'react';
import { createRoot } from 'react-dom/client';
import { App } from './App.tsx';
import { startOffline } from './offline/updates.ts';
import { followTheme } from './panels/home/themeStore.ts';
import { loadStage } from './stages/loadStage.ts';
import { stages } from './stages/stages.ts';
import { followStage } from './stages/stageStore.ts';
import { startKeeping } from './state/keep/startKeeping.ts';
import { followResult } from './state/probeStore.ts';
import { nextTask } from './state/nextTask.ts';
import { followDesign } from './state/resultStore.ts';
import { followVariants } from './state/variants/evaluateVariants.ts';
import { keepVariants } from './state/variants/keepVariants.ts';

/** Longest time that the page waits for its stage before it is drawn without, ms. */
const PATIENCE = 300;

const root = document.getElementById('root');
if (!root) throw new Error('expected an element with the id "root" in the page; found none');

followTheme();
// its code comes while the design is looked for; if it does not come, the stage says so
const stage = loadStage(followStage(stages)).catch(() => undefined);
await startKeeping();
followResult();
startOffline();
// each in a task of its own, so that the page answers in between
await nextTask();
followDesign();
await nextTask();
followVariants();
void keepVariants();
await Promise.race([stage, new Promise((resolve) => setTimeout(resolve, PATIENCE))]);

// in slices, so that the page answers in between
startTransition(() => {
  createRoot(root).render(
    <StrictMode>
      <App stages={stages} />
    </StrictMode>,
  );
});
