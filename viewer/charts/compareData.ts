/** Two radial profiles over one row of radii. */
import { uPlot } from './plot.ts';
import type { Coat } from '../../engine/index.ts';

export interface CompareData {
  /** radii of both, m, rising */
  readonly radius: readonly number[];
  /** mean over azimuth, nm; undefined or null where a profile has no point of its own */
  readonly a_nm: readonly (number | null | undefined)[];
  readonly b_nm: readonly (number | null | undefined)[];
}

/** Means over azimuth of two coats, each at its own radii. */
export function compareData(a: Coat, b: Coat): CompareData {
  const table = ({ profile }: Coat): uPlot.AlignedData => [
    Array.from(profile.radius),
    Array.from(profile.mean, (value) => value * 1e9),
  ];
  const [radius, a_nm, b_nm] = uPlot.join([table(a), table(b)]) as [number[], (number | null)[], (number | null)[]];
  return { radius, a_nm, b_nm };
}

/** A profile at any radius, by linear interpolation; NaN beyond its ends. */
export function profileAt({ profile: { radius, mean } }: Coat, r: number): number {
  const last = radius.length - 1;
  const slack = 1e-9 * radius[last]!;
  if (r < radius[0]! - slack || r > radius[last]! + slack) return NaN;
  const next = Math.max(
    1,
    radius.findIndex((value) => value >= r - slack),
  );
  const share = (r - radius[next - 1]!) / (radius[next]! - radius[next - 1]!);
  return mean[next - 1]! + share * (mean[next]! - mean[next - 1]!);
}
