/** What a pump-down gives: pressure against time, who brings the gas, and when what happens. */
import type { LoadKind } from './loads.ts';

export type PumpDownEventKind =
  'pump opens' | 'pump closes' | 'crossover' | 'glow starts' | 'glow ends' | 'trap cold' | 'firing pressure';

export interface PumpDownEvent {
  readonly kind: PumpDownEventKind;
  /** of the pump; empty for the others */
  readonly name: string;
  /** s */
  readonly time: number;
  /** Pa, total */
  readonly pressure: number;
}

/** One gas load along the curve. */
export interface LoadCurve {
  readonly name: string;
  readonly kind: LoadKind;
  /** Pa·m³/s at each time */
  readonly flow: Float64Array;
}

/** All gas of a pump-down, Pa·m³. */
export interface GasBalance {
  /** in the tank at the start, and at the end */
  readonly atStart: number;
  readonly atEnd: number;
  readonly removed: number;
  /** brought in by all loads, back from pumps and let in for the glow discharge */
  readonly brought: number;
}

/** Arrays run along time; times rise strictly from 0. */
export interface PumpDownCurve {
  readonly count: number;
  /** s since pumping began */
  readonly time: Float64Array;
  /** Pa, total */
  readonly pressure: Float64Array;
  /** Pa, by SPECIES */
  readonly partial: readonly Float64Array[];
  /** effective speed of all open pumps at the tank, m³/s, by SPECIES */
  readonly speed: readonly Float64Array[];
  /** names of the open pumps from each time on, by index into `stages` */
  readonly stage: Int32Array;
  readonly stages: readonly (readonly string[])[];
  /** the last two are what comes back from the pumps, and what is let in */
  readonly loads: readonly LoadCurve[];
  readonly events: readonly PumpDownEvent[];
  /** Pa that was asked for */
  readonly until: number;
  /** s at which it was reached; null if it was not, within the longest time */
  readonly reachedAt: number | null;
  readonly balance: GasBalance;
}

/** First event of a kind, if it came. */
export function eventOf({ events }: PumpDownCurve, kind: PumpDownEventKind): PumpDownEvent | null {
  return events.find((event) => event.kind === kind) ?? null;
}

/** Index of the last time at or before t. */
export function indexAt({ time, count }: PumpDownCurve, t: number): number {
  let [low, high] = [0, count - 1];
  while (low < high) {
    const middle = (low + high + 1) >> 1;
    if (time[middle]! <= t) low = middle;
    else high = middle - 1;
  }
  return low;
}

/** Pressure at any time of the curve, Pa: straight in log pressure over log time. */
export function pressureAt(curve: PumpDownCurve, t: number): number {
  const i = Math.min(indexAt(curve, t), curve.count - 2);
  const [t0, t1] = [curve.time[i]!, curve.time[i + 1]!];
  const [p0, p1] = [curve.pressure[i]!, curve.pressure[i + 1]!];
  const u = t0 > 0 && t > 0 ? Math.log(t / t0) / Math.log(t1 / t0) : (t - t0) / (t1 - t0);
  return p0 * (p1 / p0) ** Math.min(Math.max(u, 0), 1);
}
