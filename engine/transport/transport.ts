/** What a transport calculation is asked and answers, whoever computes it: this thread, or a pool of workers. */
import type { FilamentSource } from '../emission/filamentSource.ts';
import type { Triangles } from '../geometry/stl.ts';
import type { MirrorShape } from '../geometry/mirrorShape.ts';
import type { OrientedPoints } from '../geometry/orientedPoints.ts';
import type { Solids } from '../geometry/solids.ts';
import type { Tank } from '../geometry/tank.ts';

/** The tank's content as plain data, so that it can be sent; `key` changes with any of it. */
export interface SceneData {
  readonly key: string;
  readonly shape: MirrorShape;
  readonly tank: Tank;
  readonly solids: Solids;
  readonly meshes: readonly Triangles[];
  /** collisions per length of way in the residual gas, 1/m; 0 in vacuum (rays of the mass budget take no notice of it) */
  readonly perFreePath: number;
}

/** A filament's source with the key of its content. */
export interface KeyedSource {
  readonly key: string;
  readonly source: FilamentSource;
}

/** Points with the key of their content. */
export interface KeyedPoints {
  readonly key: string;
  readonly points: OrientedPoints;
  /** whether they lie on the mirror's face or its continuation (see Visibility) */
  readonly onFace: boolean;
}

/** Digits of what is summed: single is for drafts, see singleError. */
export type Precision = 'double' | 'single';

export type DepositPart = 'arriving' | 'hidden';

export interface DepositRequest {
  readonly scene: SceneData;
  /** blocks of points, answered one by one */
  readonly blocks: readonly KeyedPoints[];
  readonly sources: readonly KeyedSource[];
  /** what arrives, unless what is hidden is asked for: what would arrive without shields, glass and obstacles, less that */
  readonly part?: DepositPart;
  /** double unless told otherwise */
  readonly precision?: Precision;
  /** each [sources] kg per filament: one sum is returned for each */
  readonly mixes: readonly Float64Array[];
  /** whether to combine the signatures of hidden sub-sources */
  readonly withSignature: boolean;
  /** whether to sum arrival angles too, for the first mix */
  readonly withArrival: boolean;
}

/** The answer at one block of points. */
export interface DepositResult {
  /** for each mix: [points] kg/m² */
  readonly sums: readonly Float64Array[];
  /** [points] combined signature of all filaments (see Column), or null if not asked for or nothing is hidden */
  readonly signature: Uint32Array | null;
  /** [points] sums over the first mix: rad·kg/m² and kg/m² beyond 60°, or null if not asked for */
  readonly arrival: { readonly angle: Float64Array; readonly grazing: Float64Array } | null;
}

export interface TraceRequest {
  readonly scene: SceneData;
  readonly sources: readonly KeyedSource[];
  /** rays per sub-source, of each filament and replicate */
  readonly rays: number;
  readonly seed: number;
}

/** How the caller follows a long calculation and stops it. */
export interface Control {
  /**
   * Called after each piece of work with the share done, 0 to 1. May wait; ends the work by throwing.
   */
  readonly step: (share: number) => void | Promise<void>;
}

export interface Transport {
  /** Sums of influence columns at each block of points. */
  readonly deposit: (request: DepositRequest, control?: Control) => Promise<readonly DepositResult[]>;
  /** For each filament: [REPLICATES · budgetLength] shares of its vapour (see traceBudget). */
  readonly trace: (request: TraceRequest, control?: Control) => Promise<readonly Float64Array[]>;
}
