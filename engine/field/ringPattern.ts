/** A filament as every member of a ring repeats it, seen from the ring's own place at azimuth 0. */
import type { EmissionLaw } from '../emission/emissionLaw.ts';
import type { FilamentSource } from '../emission/filamentSource.ts';
import { isSameSource } from './rotation.ts';

/** Sub-sources counted from the filament's middle: x outwards, y along the ring, z away from the mirror. */
export interface RingPattern {
  /** positions are offsets from the middle, m */
  readonly source: FilamentSource;
}

/** Direction of a ring's coils. */
export type RingAxis = 'tangential' | 'radial' | 'axial';

const AXES = { radial: [1, 0, 0], tangential: [0, 1, 0], axial: [0, 0, 1] } as const;

/** Offsets of a coil are smaller than this, m; it sets how closely its two halves must mirror each other. */
const COIL_SCALE = 1;

/**
 * The pattern of any filament.
 *
 * @throws RangeError if it is not its own mirror image in the plane through the axis, or has a shield
 */
export function ringPattern(source: FilamentSource): RingPattern {
  if (source.shield !== null) throw new RangeError('expected a filament without a shield');
  if (!isSameSource(source, source, -1, COIL_SCALE)) {
    throw new RangeError('expected a filament that is its own mirror image in the plane through the axis');
  }
  return { source };
}

/**
 * The pattern of a coil: loop j at (j − (k − 1)/2)·L/k along it, each with 1/k of the charge.
 *
 * @param loops k, ≥ 1
 * @param length L, m
 * @param law wires and coils emit about the coil's axis; the cosine power is aimed at −z
 */
export function coilPattern(loops: number, length: number, axis: RingAxis, law: EmissionLaw): RingPattern {
  const along = AXES[axis];
  const aim = law.kind === 'cosine' ? [0, 0, -1] : along;
  const offset = (j: number): number => ((j - (loops - 1) / 2) * length) / loops;
  return ringPattern({
    count: loops,
    position: Float64Array.from({ length: 3 * loops }, (_, i) => offset(Math.floor(i / 3)) * along[i % 3]!),
    axis: Float64Array.from({ length: 3 * loops }, (_, i) => aim[i % 3]!),
    weight: new Float64Array(loops).fill(1 / loops),
    law,
    shield: null,
  });
}
