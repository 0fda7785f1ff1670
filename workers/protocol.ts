/**
 * What the pool and its workers say to each other.
 *
 * Calls go through comlink. Content is sent once and named by its key from then on; a worker that no
 * longer has it answers `missing`, and the pool sends it again.
 */
import type { SmoothField } from '../engine/field/smoothField.ts';
import type { ScatterProblem } from '../engine/gas/scatterProblem.ts';
import type { ScatterTally } from '../engine/gas/tally.ts';
import type { DepositPart, DepositResult, KeyedPoints, Precision, SceneData } from '../engine/transport/transport.ts';
import type { PackedSources } from './packedSources.ts';

/** Content that the worker may not have yet, by key. */
export interface Parcel {
  readonly scene: SceneData | null;
  readonly points: readonly KeyedPoints[];
  readonly sources: PackedSources;
}

export interface DepositCall {
  readonly scene: string;
  readonly blocks: readonly string[];
  readonly sources: readonly string[];
  readonly part: DepositPart;
  readonly precision: Precision;
  readonly mixes: readonly Float64Array[];
  readonly withSignature: boolean;
  readonly withArrival: boolean;
  /** buffers of earlier answers, to be written over: fresh memory would cost the system more than the sums */
  readonly spare: readonly ArrayBuffer[];
}

export interface TraceCall {
  readonly scene: string;
  readonly sources: readonly string[];
  readonly rays: number;
  readonly seed: number;
}

export interface FieldCall {
  readonly scene: string;
  readonly sources: readonly string[];
  readonly masses: Float64Array;
  readonly wantedError: number;
}

export interface FlyCall {
  readonly problem: string;
  readonly first: number;
  readonly count: number;
}

export type Answer<T> = { readonly ok: true; readonly result: T } | { readonly ok: false; readonly missing: true };

/** The one interface of every compute worker, in browsers and in Node. */
export interface ComputeApi {
  deposit(job: number, parcel: Parcel, call: DepositCall): Promise<Answer<readonly DepositResult[]>>;
  trace(job: number, parcel: Parcel, call: TraceCall): Promise<Answer<readonly Float64Array[]>>;
  field(job: number, parcel: Parcel, call: FieldCall): Promise<Answer<SmoothField>>;
  /** Flies chunks first … first + count; the problem is sent once and named by its key. */
  fly(job: number, problem: ScatterProblem | null, call: FlyCall): Promise<Answer<ScatterTally>>;
  /** Ends a job at its next step; its call is rejected. */
  cancel(job: number): void;
}

/** Sent beside comlink's messages while a job runs. */
export interface Progress {
  readonly evenfallProgress: number;
  /** share done, 0 to 1 */
  readonly share: number;
}

/** Whether a message is a progress report. */
export function isProgress(message: unknown): message is Progress {
  return typeof message === 'object' && message !== null && 'evenfallProgress' in message;
}
