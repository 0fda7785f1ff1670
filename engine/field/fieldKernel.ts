/** What the field needs of a deposit kernel. */
import type { FilamentSource } from '../emission/filamentSource.ts';
import type { OrientedPoints } from '../geometry/orientedPoints.ts';

/** A deposit kernel that may weight lines of sight by e^(−r·perFreePath). See DepositKernel. */
export interface FieldKernel {
  load(points: OrientedPoints, begin: number, end: number, perFreePath?: number): void;
  clear(): void;
  addAll(source: FilamentSource): void;
  readInto(out: Float64Array): void;
}
