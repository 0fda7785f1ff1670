import './styles.css';
import './styles/buttons.css';
import './styles/numbers.css';
import './styles/dialog.css';
import './styles/print.css';
import { StrictMode } from 'react';
import { createRoot } from 'react-dom/client';
import { App } from './App.tsx';
import { followTheme } from './panels/home/themeStore.ts';
import { stages } from './stages/stages.ts';
import { followStage } from './stages/stageStore.ts';
import { startKeeping } from './state/keep/startKeeping.ts';
import { followResult } from './state/probeStore.ts';
import { followDesign } from './state/resultStore.ts';
import { followVariants } from './state/variants/evaluateVariants.ts';
import { keepVariants } from './state/variants/keepVariants.ts';

const root = document.getElementById('root');
if (!root) throw new Error('expected an element with the id "root" in the page; found none');

followTheme();
// its code comes while the design is looked for; if it does not come, the stage says so
void followStage(stages)
  .load()
  .catch(() => undefined);
await startKeeping();
followResult();
followDesign();
followVariants();
void keepVariants();

createRoot(root).render(
  <StrictMode>
    <App stages={stages} />
  </StrictMode>,
);
