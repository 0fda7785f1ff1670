/** The radial profile in the units of its chart. */
import type { Coat } from '../../engine/index.ts';

export interface ProfileData {
  /** m */
  readonly radius: Float64Array;
  readonly mean_nm: Float64Array;
  readonly minimum_nm: Float64Array;
  readonly maximum_nm: Float64Array;
  /** mean over the clear aperture */
  readonly average_nm: number;
  readonly target_nm: number;
  /** share either side of the average */
  readonly tolerance: number;
  /** radii where the clear aperture begins and ends, m */
  readonly clear: readonly [number, number];
}

const toNm = (value: number): number => value * 1e9;

export function profileData({ profile, plant, statistics }: Coat): ProfileData {
  return {
    radius: profile.radius,
    mean_nm: profile.mean.map(toNm),
    minimum_nm: profile.minimum.map(toNm),
    maximum_nm: profile.maximum.map(toNm),
    average_nm: toNm(statistics.mean.value),
    target_nm: toNm(plant.film.target),
    tolerance: plant.film.tolerance,
    clear: [plant.shape.clearInnerRadius, plant.shape.clearOuterRadius],
  };
}

/** Rows for a table: every so many radii, the first and the last among them. */
export function profileRows({ radius }: ProfileData, most: number): number[] {
  const last = radius.length - 1;
  const rows = Math.min(most, radius.length);
  return Array.from({ length: rows }, (_, i) => (rows === 1 ? 0 : Math.round((i * last) / (rows - 1))));
}
