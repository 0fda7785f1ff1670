/** Writes each design state on the page into the database, a moment after it was made. */
import { keptText } from '../../format/designText.ts';
import { useDesign, type Snapshot } from '../designStore.ts';
import { findText, writeState, type FullState } from './database.ts';
import { fileIdOf } from './fileIds.ts';
import { noteFailure, noteRevision, useKeep } from './keepStore.ts';
import { beginDesign, traceOf, traceStep, type DesignTrace, type Trace } from './lineage.ts';
import { freshId, textSum } from './records.ts';

type Bytes = Uint8Array<ArrayBuffer>;

export interface Followers {
  /** another design is on the page; null for an unedited preset */
  readonly onMove: (design: DesignTrace | null) => void;
  /** another tab holds a design that was to be written */
  readonly onLost: (design: DesignTrace) => void;
  /** a state was written */
  readonly onWritten: (designId: string) => void;
}

/** This tab, until it is loaded again. */
export const ME = freshId();
/** Rest after an edit before it is written, ms. */
const REST = 300;
/** Longest time that an edit waits while others follow, ms. */
const LONGEST_WAIT = 1000;

/** What is not written yet, in the order of making. */
const pending = new Map<Trace, Snapshot>();
let timer: ReturnType<typeof setTimeout> | undefined;
let waitingSince: number | null = null;
let writing: Promise<void> = Promise.resolve();
let followers: Followers | null = null;

function fullState({ design, at, label, value }: Trace, { file, files }: Snapshot): FullState {
  const text = keptText(file);
  const keyed = Array.from(files, ([name, bytes]) => [name, fileIdOf(bytes), bytes] as const);
  return {
    state: {
      designId: design.id,
      at,
      label,
      value,
      name: file.name,
      files: keyed.map(([name, id]) => [name, id] as const),
      textSum: textSum(text),
    },
    text,
    files: new Map(keyed.map(([, id, bytes]) => [id, bytes] as const)),
  };
}

/** Shows what a trace is; null for an unedited preset. */
export function showTrace(trace: Trace | undefined): void {
  useKeep.setState({
    designId: trace?.design.id ?? null,
    at: trace?.at ?? null,
    isUnsaved: trace !== undefined && trace.at !== trace.design.saved,
    isPending: pending.size > 0,
  });
}

/** Whether another tab is known to hold a design; then nothing of it is written. */
function isHeldElsewhere(design: DesignTrace): boolean {
  const { designId, tenure } = useKeep.getState();
  return design.id === designId && (tenure === 'elsewhere' || tenure === 'lost');
}

async function write(trace: Trace, snapshot: Snapshot): Promise<void> {
  const { design } = trace;
  await design.ready;
  if (isHeldElsewhere(design)) {
    if (trace.isStored) pending.delete(trace);
    return;
  }
  const { id, saved } = design;
  const kept = { id, name: snapshot.file.name, head: trace.at, usedAt: Date.now(), saved, declined: null };
  if (!(await writeState(ME, fullState(trace, snapshot), kept))) {
    if (trace.isStored) pending.delete(trace);
    followers?.onLost(design);
    return;
  }
  trace.isStored = true;
  if (pending.get(trace) === snapshot) pending.delete(trace);
  noteRevision();
  followers?.onWritten(design.id);
}

async function writeAll(): Promise<void> {
  try {
    for (const [trace, snapshot] of pending) await write(trace, snapshot);
    useKeep.setState({ failure: null });
  } catch (error) {
    noteFailure(error);
  }
  showTrace(traceOf(useDesign.getState().current));
}

/** Writes what is not written yet; settles when that is done or has failed. */
export async function flush(): Promise<void> {
  clearTimeout(timer);
  waitingSince = null;
  if (pending.size === 0) return writing;
  writing = writing.then(writeAll);
  return writing;
}

/** Will write a state as the head of its design. */
export function queue(trace: Trace, snapshot: Snapshot): void {
  pending.delete(trace);
  pending.set(trace, snapshot);
  const now = performance.now();
  waitingSince ??= now;
  clearTimeout(timer);
  timer = setTimeout(() => void flush(), Math.min(REST, Math.max(0, waitingSince + LONGEST_WAIT - now)));
}

/** Forgets what was to be written of a design that now belongs to another tab. */
export function unqueue(design: DesignTrace): void {
  for (const trace of pending.keys()) if (trace.design === design) pending.delete(trace);
}

/** Whether anything is not written yet. */
export function hasAnyPending(): boolean {
  return pending.size > 0;
}

/** Whether something of a design is not written yet. */
export function hasPending(design: DesignTrace): boolean {
  return [...pending.keys()].some((trace) => trace.design === design);
}

const areSameBytes = (a: Bytes, b: Bytes | undefined): boolean =>
  a.length === b?.length && a.every((byte, i) => byte === b[i]);

/** Recognises an opened file that has been kept before: it goes on as the same design. */
async function recognise(trace: Trace, { file, files }: Snapshot): Promise<void> {
  try {
    const text = keptText(file);
    const found = await findText(text, textSum(text));
    if (!found) return;
    trace.design.id = found.design.id;
    const isSame = [...files].every(([name, bytes]) => areSameBytes(bytes, found.files.get(name)));
    if (isSame) trace.at = found.state.at;
    trace.isStored = isSame;
    trace.design.saved = trace.at;
  } catch (error) {
    noteFailure(error);
  }
}

/** Keeps the snapshot from now on, if it is not kept yet. */
function keepSnapshot(snapshot: Snapshot, label: string): Trace {
  return traceOf(snapshot) ?? beginDesign(snapshot, label);
}

/** Notes that a snapshot was saved to a file; answers the kept design that it is. */
export function noteSaved(snapshot: Snapshot): string {
  const trace = keepSnapshot(snapshot, 'save');
  trace.design.saved = trace.at;
  // the head stays where it is: the page may have moved on while the file was written
  const { current } = useDesign.getState();
  const head = traceOf(current);
  if (head?.design === trace.design) queue(head, current);
  else queue(trace, snapshot);
  showTrace(head);
  return trace.design.id;
}

/** Keeps every design that comes onto the page. */
export function followSnapshots(told: Followers): void {
  followers = told;
  useDesign.subscribe((state, before) => {
    if (state.current === before.current) return;
    const from = traceOf(before.current)?.design;
    const step = traceStep(state, before);
    if (step?.isOpened) step.trace.design.ready = recognise(step.trace, state.current);
    if (step?.base) queue(step.base, before.current);
    if (step) queue(step.trace, state.current);
    showTrace(step?.trace);
    if (step?.trace.design !== from || !step) told.onMove(step?.trace.design ?? null);
  });
}
