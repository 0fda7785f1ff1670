/** The range that a map's colours span, and the round values written beside it. */
import { scaleLinear } from 'd3-scale';

export interface ValueScale {
  readonly low: number;
  readonly high: number;
  readonly ticks: readonly number[];
}

const TICKS = 6;

/** Least and greatest value; NaN is left out. Two NaNs if there is no value. */
export function extentOf(values: Float64Array): readonly [number, number] {
  let [low, high] = [Infinity, -Infinity];
  for (const value of values) {
    if (value < low) low = value;
    if (value > high) high = value;
  }
  return low <= high ? [low, high] : [NaN, NaN];
}

/** A scale over exactly these values. */
export function exactScale(low: number, high: number): ValueScale {
  return { low, high, ticks: scaleLinear([low, high], [0, 1]).ticks(TICKS) };
}

/** Share of the greatest value that an even map's range spans at least, so that rounding is not painted as a pattern. */
const LEAST_SPAN = 0.002;

/** A scale over round numbers around a range. */
export function roundScale([low, high]: readonly [number, number]): ValueScale {
  if (!(low <= high) || (low === 0 && high === 0)) return exactScale(0, 1);
  const pad = Math.max(0, LEAST_SPAN * Math.max(Math.abs(low), Math.abs(high)) - (high - low)) / 2;
  const from = low >= 0 ? Math.max(0, low - pad) : low - pad;
  const [niceLow = 0, niceHigh = 1] = scaleLinear([from, high + pad], [0, 1])
    .nice(TICKS)
    .domain();
  return exactScale(niceLow, niceHigh);
}

/** A scale from −most to +most, round: zero lies in its middle. */
export function symmetricScale([low, high]: readonly [number, number], leastSpan: number): ValueScale {
  const most = Math.max(Math.abs(low) || 0, Math.abs(high) || 0, leastSpan / 2);
  const [, nice = most] = scaleLinear([0, most], [0, 1])
    .nice(TICKS / 2)
    .domain();
  return exactScale(-nice, nice);
}

/** Where a value lies on a scale, 0 to 1. */
export function shareOn({ low, high }: ValueScale, value: number): number {
  return high > low ? Math.min(1, Math.max(0, (value - low) / (high - low))) : 0.5;
}

/** Decimals that a list of round values needs. */
export function decimalsOf(values: readonly number[]): number {
  const needed = values.map((value) => (String(Number(value.toPrecision(9))).split('.')[1] ?? '').length);
  return Math.max(0, ...needed);
}
