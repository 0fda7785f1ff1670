/** The radial profile in the user's units, so that the chart's axes are round in them. */
import type { ShownUnit } from '../../workers/picture/mapSubject.ts';
import type { ProfileData } from './profileData.ts';

export interface ProfileUnits {
  /** per metre */
  readonly length: ShownUnit;
  /** per nanometre */
  readonly thickness: ShownUnit;
}

/** All lengths in the one unit, all thicknesses in the other. */
export interface ShownProfile {
  readonly radius: Float64Array;
  readonly mean: Float64Array;
  readonly minimum: Float64Array;
  readonly maximum: Float64Array;
  readonly average: number;
  readonly target: number;
  /** share either side of the average */
  readonly tolerance: number;
  /** radii where the clear aperture begins and ends */
  readonly clear: readonly [number, number];
}

export function shownProfile(data: ProfileData, { length, thickness }: ProfileUnits): ShownProfile {
  const thick = (value: number): number => value * thickness.factor;
  const long = (value: number): number => value * length.factor;
  return {
    radius: data.radius.map(long),
    mean: data.mean_nm.map(thick),
    minimum: data.minimum_nm.map(thick),
    maximum: data.maximum_nm.map(thick),
    average: thick(data.average_nm),
    target: thick(data.target_nm),
    tolerance: data.tolerance,
    clear: [long(data.clear[0]), long(data.clear[1])],
  };
}
