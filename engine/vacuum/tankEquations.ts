/** The balance of gas in the tank, as a stiff differential equation. */
import { summedLoads, type TimedLoad } from './loads.ts';
import { AIR, OTHER, SPECIES_COUNT, WATER } from './species.ts';
import type { StiffProblem } from './stiff.ts';
import { suctionReading, type Suction } from './suction.ts';

/** Places of the integrals: gas removed, gas back from the pumps, gas let in; then each timed load. */
export const REMOVED = 0;
export const BACK = 1;
export const ADMITTED = 2;
export const FIRST_LOAD = 3;

/** What can change from one phase of a pump-down to the next. */
export interface Phase {
  suction: Suction;
  /** whether gas is let in so that the pressure stays */
  isHeld: boolean;
}

const total = (y: Float64Array): number => y[0]! + y[1]! + y[2]!;

/**
 * Partial pressures against time.
 *
 *     V dpᵢ/dt = Qᵢ(t) + Bᵢ(p) − Sᵢ(p) pᵢ,   p = Σ pᵢ
 *
 * While the pressure is held, air (or the glow's gas, counted as air) makes up for what is pumped:
 * dp_air/dt = −Σ dp_others/dt.
 */
export function tankEquations(volume: number, loads: readonly TimedLoad[], phase: Phase): StiffProblem {
  const n = SPECIES_COUNT;
  const reading = suctionReading();
  const loadAt = summedLoads(loads);
  const one = new Float64Array(n);

  function rateInto(out: Float64Array, time: number, y: Float64Array): void {
    const load = loadAt(time);
    phase.suction.readInto(reading, total(y));
    for (let i = 0; i < n; i++) out[i] = (load[i]! - reading.speed[i]! * y[i]!) / volume;
    out[OTHER]! += reading.backflow / volume;
    if (phase.isHeld) out[AIR] = -(out[WATER]! + out[OTHER]!);
  }

  function slopesInto(out: Float64Array, _time: number, y: Float64Array): void {
    phase.suction.readInto(reading, total(y));
    for (let i = 0; i < n; i++) {
      const bySum = (i === OTHER ? reading.backflowSlope : 0) - reading.slope[i]! * y[i]!;
      for (let j = 0; j < n; j++) out[n * i + j] = (bySum - (i === j ? reading.speed[i]! : 0)) / volume;
    }
    if (phase.isHeld) for (let j = 0; j < n; j++) out[n * AIR + j] = -(out[n * WATER + j]! + out[n * OTHER + j]!);
  }

  function integrandsInto(out: Float64Array, time: number, y: Float64Array): void {
    const load = loadAt(time);
    phase.suction.readInto(reading, total(y));
    out[REMOVED] = 0;
    let change = 0;
    for (let i = 0; i < n; i++) {
      const pumped = reading.speed[i]! * y[i]!;
      out[REMOVED]! += pumped;
      change += load[i]! - pumped;
    }
    out[BACK] = reading.backflow;
    // held: what is let in is what would otherwise be missing, so that the sum does not change
    out[ADMITTED] = phase.isHeld ? -(change + reading.backflow) : 0;
    loads.forEach(({ flowInto }, k) => {
      flowInto(one, time);
      out[FIRST_LOAD + k] = one[0]! + one[1]! + one[2]!;
    });
  }

  return { count: n, integralCount: FIRST_LOAD + loads.length, rateInto, slopesInto, integrandsInto };
}
