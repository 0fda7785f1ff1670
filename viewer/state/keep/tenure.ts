/** Which tab may write the design on the page: two tabs never overwrite each other unseen. */
import { useDesign } from '../designStore.ts';
import { editDesign } from '../editDesign.ts';
import { abandonLease, dropLease, readLease, readState, renewLease, seizeLease, takeLease } from './database.ts';
import { flush, hasPending, ME, queue, showTrace, unqueue } from './keeper.ts';
import { noteFailure, noteRevision, useKeep, type Tenure } from './keepStore.ts';
import { ANSWER, BEAT, judgeLease } from './lease.ts';
import { splitOff, traceOf, type DesignTrace } from './lineage.ts';
import { restore } from './restore.ts';
import { inquire, listen, tell, type TabMessage } from './tabs.ts';

/** How long another tab may take to write what it has, ms. */
const HANDOVER = 1500;
/** The other tab must be gone so often in a row: one that is only being loaded again is back by then. */
const GONE = 2;
/** Longest name of a design. */
const MAX_NAME = 80;

/** The design that this tab is on; null for an unedited preset. */
let present: DesignTrace | null = null;
/** Whether its lease is this tab's. */
let isHolder = false;
let goneCount = 0;

function settle(tenure: Tenure): void {
  isHolder = tenure === 'held';
  goneCount = 0;
  useKeep.setState({ tenure });
}

/** Whether the lease of a design can be had without asking the user. */
async function isFree(designId: string): Promise<boolean> {
  const lease = await readLease(designId);
  let claim = judgeLease(lease, ME, Date.now(), null);
  if (claim === 'ask') {
    const answered = await inquire({ kind: 'ask', designId }, 'held', ANSWER);
    claim = judgeLease(lease, ME, Date.now(), answered);
  }
  return claim === 'free';
}

async function claim(designId: string): Promise<boolean> {
  const judged = await readLease(designId);
  return (await isFree(designId)) && takeLease(designId, ME, judged);
}

/** Follows the page to another design: gives the old one back and claims the new one. */
export async function moveTo(design: DesignTrace | null): Promise<void> {
  const old = present;
  if (design === old) return;
  present = design;
  settle(design ? 'held' : 'none');
  isHolder = false; // until the claim is settled; writing looks at the lease itself
  try {
    await flush();
    if (old && old.id !== design?.id) await dropLease(old.id, ME);
    if (!design) return;
    await design.ready;
    if (present !== design) return;
    showTrace(traceOf(useDesign.getState().current));
    const isMine = await claim(design.id);
    if (present !== design) return;
    settle(isMine ? 'held' : 'elsewhere');
    await flush();
  } catch (error) {
    noteFailure(error);
  }
}

/** Another tab has the design now. */
export function loseDesign(design: DesignTrace): void {
  if (design === present && isHolder) settle('lost');
}

/** Takes the design over from the other tab, with all that it has written. */
export async function takeOver(): Promise<void> {
  const design = present;
  if (!design) return;
  try {
    await inquire({ kind: 'take', designId: design.id }, 'given', HANDOVER);
    const theirs = (await readState(design.id))?.state.at;
    await seizeLease(design.id, ME);
    if (present !== design) return;
    settle('held');
    await flush(); // edits that were stopped when the other tab took over: they go into the history
    const own = traceOf(useDesign.getState().current)?.at;
    if (theirs !== undefined && theirs !== own) await restore(design.id, 'take over', theirs);
  } catch (error) {
    noteFailure(error);
  }
}

/** Goes on with the design under another name, and leaves the old one to the other tab. */
export function workOnCopy(): void {
  const old = present;
  if (!old) return;
  unqueue(old);
  present = splitOff(useDesign.getState(), old);
  settle('held');
  const suffix = ' (copy)';
  editDesign('work on a copy', (file) => ({ ...file, name: file.name.slice(0, MAX_NAME - suffix.length) + suffix }));
  const { current } = useDesign.getState();
  const trace = traceOf(current);
  if (trace) queue(trace, current);
  showTrace(trace);
}

async function answer({ kind, designId }: TabMessage): Promise<void> {
  if (kind === 'written') noteRevision();
  if (designId !== present?.id || !isHolder) return;
  if (kind === 'ask') tell({ kind: 'held', designId });
  if (kind !== 'take') return;
  await flush();
  settle('lost');
  tell({ kind: 'given', designId });
}

/** A sign of life while the design is held; else a look whether the other tab is still there. */
async function beat(): Promise<void> {
  const design = present;
  const { tenure } = useKeep.getState();
  if (!design || tenure === 'none') return;
  try {
    if (isHolder) {
      if (!(await renewLease(design.id, ME))) loseDesign(design);
    } else if (tenure !== 'held' && !hasPending(design)) {
      goneCount = (await isFree(design.id)) ? goneCount + 1 : 0;
      if (goneCount >= GONE && design === present) await takeOver();
    }
  } catch {
    // the writer tells about a failing database
  }
}

/** A page that goes away has no time to wait for answers; what it has to write was sent off before. */
async function leave(): Promise<void> {
  if (present && isHolder) await abandonLease(present.id);
}

/** A page that comes back from the browser's memory claims its design again. */
async function comeBack(): Promise<void> {
  const design = present;
  if (!design || !isHolder) return;
  if (!(await claim(design.id))) loseDesign(design);
}

const quietly = (work: Promise<void>): void => void work.catch(noteFailure);

/** Keeps the lease while the page lives. */
export function followTabs(): void {
  listen((message) => quietly(answer(message)));
  setInterval(() => quietly(beat()), BEAT);
  window.addEventListener('pagehide', () => quietly(leave()));
  window.addEventListener('pageshow', ({ persisted }) => persisted && quietly(comeBack()));
}
