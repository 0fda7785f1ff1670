/** What to do at the start of a page about the sessions before it. */
import { useDesign } from '../designStore.ts';
import { inquire } from './tabs.ts';
import { declineDesign, listDesigns, listLeases, readState } from './database.ts';
import { ME } from './keeper.ts';
import { noteFailure, useKeep } from './keepStore.ts';
import { ANSWER, judgeLease } from './lease.ts';
import { traceOf } from './lineage.ts';
import { recoverable } from './retention.ts';
import { restore, snapshotOf } from './restore.ts';

/** The design of this browser tab, over reloads. */
const TAB_KEY = 'evenfall-design';
/** Set while a design is being brought back: still set at the next start, it broke the page. */
const TRYING_KEY = 'evenfall-restoring';
/** A design that has been on the page for so long does not break it, ms. */
const SAFE = 5000;

/** The tab's own memory; null where the browser forbids it. */
function tabMemory(): Storage | null {
  try {
    return window.sessionStorage;
  } catch {
    return null;
  }
}

/** Remembers for this browser tab which design is on the page. */
export function rememberTab(): void {
  const memory = tabMemory();
  useKeep.subscribe(({ designId }, before) => {
    if (designId === before.designId) return;
    if (designId === null) memory?.removeItem(TAB_KEY);
    else memory?.setItem(TAB_KEY, designId);
  });
}

/** Brings back the design that this browser tab was on before it was loaded again; answers whether it did. */
async function resume(): Promise<boolean> {
  const memory = tabMemory();
  const designId = memory?.getItem(TAB_KEY);
  if (!memory || typeof designId !== 'string' || memory.getItem(TRYING_KEY) !== null) {
    memory?.removeItem(TRYING_KEY);
    return false;
  }
  const atStart = useDesign.getState().current;
  const read = await readState(designId);
  if (!read || useDesign.getState().current !== atStart) return false;
  memory.setItem(TRYING_KEY, designId);
  const done = (): void => memory.removeItem(TRYING_KEY);
  setTimeout(done, SAFE);
  window.addEventListener('pagehide', done);
  const snapshot = snapshotOf(read);
  if (snapshot) useDesign.setState({ current: snapshot, past: [], future: [] });
  return snapshot !== null;
}

/** Names of the designs that other living tabs are on. */
async function openElsewhere(): Promise<Set<string>> {
  const held = await Promise.all(
    (await listLeases()).map(async (lease) => {
      const { designId } = lease;
      if (judgeLease(lease, ME, Date.now(), null) === 'free') return [];
      return (await inquire({ kind: 'ask', designId }, 'held', ANSWER)) ? [designId] : [];
    }),
  );
  return new Set(held.flat());
}

/** Offers the design that an earlier session left with edits in no file. */
async function offer(): Promise<void> {
  const design = recoverable(await listDesigns(), await openElsewhere());
  const present = traceOf(useDesign.getState().current)?.design.id;
  if (design && design.id !== present) useKeep.setState({ offer: design });
}

/** Resumes, or else offers what can be recovered. Never throws; `isFree` says that the page shows nothing yet. */
export async function recover(isFree: boolean): Promise<void> {
  try {
    if (!(isFree && (await resume()))) void offer().catch(noteFailure);
  } catch (error) {
    noteFailure(error);
  }
}

/** Takes the offer. */
export async function acceptOffer(): Promise<void> {
  const { offer: design } = useKeep.getState();
  if (design && (await restore(design.id, 'restore'))) useKeep.setState({ offer: null });
}

/** Declines the offer; the design stays among the recent ones. */
export async function declineOffer(): Promise<void> {
  const { offer: design } = useKeep.getState();
  useKeep.setState({ offer: null });
  try {
    if (design) await declineDesign(design.id);
  } catch (error) {
    noteFailure(error);
  }
}
