/** What is kept, what is dropped, and what is offered back. */
import type { KeptDesign } from './records.ts';

/** States kept of each design. */
export const MAX_STATES = 50;
/** Designs listed as recent. */
export const MAX_RECENT = 12;
/** Older designs that are kept beyond those because their last state lies in no file. */
export const MAX_UNSAVED = 48;

/**
 * The states to drop so that at most MAX_STATES stay: the oldest go first, the one on the page never.
 *
 * @param times of all states of one design
 */
export function statesToDrop(times: readonly number[], head: number): number[] {
  const droppable = times.filter((at) => at !== head).toSorted((a, b) => b - a);
  return droppable.slice(MAX_STATES - (times.includes(head) ? 1 : 0));
}

/** Whether the last state of a design lies in no file. */
export function isUnsaved({ head, saved }: Pick<KeptDesign, 'head' | 'saved'>): boolean {
  return head !== saved;
}

export interface SortedDesigns {
  /** the last ones used, newest first */
  readonly recent: readonly KeptDesign[];
  /** older ones that lie in no file */
  readonly older: readonly KeptDesign[];
  /** neither: safe in a file and long unused, or too many */
  readonly dropped: readonly KeptDesign[];
}

/** Sorts designs by their last use. */
export function sortDesigns(designs: readonly KeptDesign[]): SortedDesigns {
  const sorted = designs.toSorted((a, b) => b.usedAt - a.usedAt);
  const rest = sorted.slice(MAX_RECENT);
  const older = rest.filter(isUnsaved).slice(0, MAX_UNSAVED);
  return { recent: sorted.slice(0, MAX_RECENT), older, dropped: rest.filter((design) => !older.includes(design)) };
}

/**
 * The design to offer after a session that ended with unsaved edits: the one used last, unless the user has declined
 * it or another tab has it open.
 */
export function recoverable(designs: readonly KeptDesign[], openElsewhere: ReadonlySet<string>): KeptDesign | null {
  const offered = designs.filter(
    (design) => isUnsaved(design) && design.declined !== design.head && !openElsewhere.has(design.id),
  );
  return offered.toSorted((a, b) => b.usedAt - a.usedAt)[0] ?? null;
}
