/** What the browser's database holds: designs, their states, and which tab works on which design. */

/** One state of a design; its text and its files lie beside it. */
export interface KeptState {
  readonly designId: string;
  /** when it was made, ms; no two states of a design share it */
  readonly at: number;
  /** the edit that made it, such as "height of outer" */
  readonly label: string;
  /** the one value that the edit changed, such as "0.95 m", or null */
  readonly value: string | null;
  readonly name: string;
  /** the files that it names, by the keys of their bytes */
  readonly files: readonly (readonly [name: string, fileId: string])[];
  /** sum over its text, to find it again */
  readonly textSum: number;
}

/** One design, through all its states. */
export interface KeptDesign {
  readonly id: string;
  readonly name: string;
  /** the state on the page when it was last open */
  readonly head: number;
  /** when it was last opened or edited, ms */
  readonly usedAt: number;
  /** the state that also lies in a file or a preset, or null */
  readonly saved: number | null;
  /** the state whose recovery the user has declined, or null */
  readonly declined: number | null;
}

/** The tab that may write a design. */
export interface Lease {
  readonly designId: string;
  readonly holder: string;
  /** last sign of life, ms */
  readonly beat: number;
}

/** A sum over a text (FNV-1a, 32 bits): equal texts have equal sums; the reverse must be checked. */
export function textSum(text: string): number {
  let sum = 0x811c9dc5;
  for (let i = 0; i < text.length; i++) sum = Math.imul(sum ^ text.charCodeAt(i), 0x01000193);
  return sum >>> 0;
}

/** A random name that no other tab or design has. */
export function freshId(): string {
  const bytes = crypto.getRandomValues(new Uint8Array(12));
  return Array.from(bytes, (byte) => byte.toString(16).padStart(2, '0')).join('');
}

let lastTime = 0;

/** The time now, ms; later than any that it gave before. */
export function freshTime(): number {
  lastTime = Math.max(Date.now(), lastTime + 1);
  return lastTime;
}
