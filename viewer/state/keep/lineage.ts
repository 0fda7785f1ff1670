/** Which kept design, and which of its states, each design on the page is. */
import type { DesignState, Snapshot } from '../designStore.ts';
import { changedValue } from './changedValue.ts';
import { freshId, freshTime } from './records.ts';

/** A kept design as this tab knows it; shared by all its states. */
export interface DesignTrace {
  id: string;
  /** the state that also lies in a file or a preset */
  saved: number | null;
  /** settles once it is known whether the design has been kept before */
  ready: Promise<void>;
}

/** One state of a kept design. */
export interface Trace {
  readonly design: DesignTrace;
  at: number;
  readonly label: string;
  /** the one value that the edit changed, or null */
  readonly value: string | null;
  /** whether the database holds it as it is */
  isStored: boolean;
}

const traces = new WeakMap<Snapshot, Trace>();

/** The kept state that a snapshot is; undefined for a preset that nobody has edited. */
export function traceOf(snapshot: Snapshot): Trace | undefined {
  return traces.get(snapshot);
}

export function setTrace(snapshot: Snapshot, trace: Trace): Trace {
  traces.set(snapshot, trace);
  return trace;
}

/** A design that was not kept before. */
export function newDesign(saved: number | null = null): DesignTrace {
  return { id: freshId(), saved, ready: Promise.resolve() };
}

/** Starts to keep a snapshot as a design of its own, in the state that lies in a file or a preset. */
export function beginDesign(snapshot: Snapshot, label: string): Trace {
  const at = freshTime();
  return setTrace(snapshot, { design: newDesign(at), at, label, value: null, isStored: false });
}

/** Files are opened under this label; every other step is an edit. */
const OPENED = /^open .*\.json$/i;

/** What a step on the page made. */
export interface Step {
  readonly trace: Trace;
  /** the state before it, if that is kept from now on too */
  readonly base: Trace | null;
  /** whether it is a file that was opened, which may have been kept before */
  readonly isOpened: boolean;
}

/** Traces the current design after a step; null for an unedited preset. */
export function traceStep(state: DesignState, before: DesignState): Step | null {
  const { current } = state;
  const known = traceOf(current);
  if (known) return { trace: known, base: null, isOpened: false };
  const label = state.past.at(-1)?.label ?? 'start';
  if (OPENED.test(label)) return { trace: beginDesign(current, label), base: null, isOpened: true };
  if (current.presetId !== null) return null;
  const parent = traceOf(before.current);
  const base = parent ?? beginDesign(before.current, 'as the preset has it');
  const goesOn = parent !== undefined && state.past === before.past && parent.at !== parent.design.saved;
  const start = goesOn ? (state.past.at(-1)?.other ?? before.current) : before.current;
  const trace = setTrace(current, {
    design: base.design,
    at: goesOn ? parent.at : freshTime(),
    label,
    value: changedValue(start.file, current.file),
    isStored: false,
  });
  return { trace, base: parent ? null : base, isOpened: false };
}

/** Gives every state of a design on the page to a new design of its own, from which the old one is safe. */
export function splitOff({ current, past, future }: DesignState, from: DesignTrace): DesignTrace {
  const copy = newDesign();
  for (const snapshot of [...past, ...future].map(({ other }) => other).concat(current)) {
    const trace = traceOf(snapshot);
    if (trace?.design === from)
      setTrace(snapshot, { design: copy, at: freshTime(), label: trace.label, value: trace.value, isStored: false });
  }
  return copy;
}
