/** Starts all that keeps the user's work. */
import { followSnapshots } from './keeper.ts';
import { followLeaving, followSaveKeys, followTitle } from './leaving.ts';
import { openLink } from './linkActions.ts';
import { recover, rememberTab } from './recovery.ts';
import { tell } from './tabs.ts';
import { followTabs, loseDesign, moveTo } from './tenure.ts';

/** Longest time that the page waits for its last design before it shows the first preset, ms. */
const PATIENCE = 600;

/**
 * To be called once, before the page is drawn. Settles as soon as the page knows which design to show: the one in its
 * address, the one from before it was loaded again, or the first preset.
 */
export async function startKeeping(): Promise<void> {
  follow();
  const isLinked = await openLink();
  await Promise.race([recover(!isLinked), new Promise((resolve) => setTimeout(resolve, PATIENCE))]);
}

function follow(): void {
  rememberTab();
  followSnapshots({
    onMove: (design) => void moveTo(design),
    onLost: loseDesign,
    onWritten: (designId) => tell({ kind: 'written', designId }),
  });
  followTabs();
  followTitle();
  followSaveKeys();
  followLeaving();
  window.addEventListener('hashchange', () => void openLink());
}
