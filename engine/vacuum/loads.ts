/** What brings gas into the tank while it is pumped: leak, surfaces, and what comes back from the pumps. */
import { outgassingRate } from './outgassing.ts';
import type { PumpSystem } from './system.ts';
import { AIR, OTHER, SPECIES_COUNT, WATER } from './species.ts';
import { waterAfter, type Venting } from './water.ts';

export type LoadKind = 'leak' | 'surface' | 'pumps' | 'admitted';

/** A gas load whose flow depends on time alone. */
export interface TimedLoad {
  readonly name: string;
  readonly kind: LoadKind;
  /** Pa·m³/s at a time since pumping began, s, of each species */
  readonly flowInto: (out: Float64Array, time: number) => void;
}

/** Leak and surfaces of a system after a venting. */
export function timedLoads({ leak, surfaces }: PumpSystem, venting: Venting): TimedLoad[] {
  const water = waterAfter(venting);
  const leakLoad: TimedLoad = {
    name: 'leak',
    kind: 'leak',
    flowInto: (out) => {
      out.fill(0);
      out[AIR] = leak;
    },
  };
  return [
    ...(leak > 0 ? [leakLoad] : []),
    ...surfaces.map(({ name, area, law, water: share, isBulk }): TimedLoad => {
      const wet = share * (isBulk ? 1 : water);
      return {
        name,
        kind: 'surface',
        flowInto: (out, time) => {
          const flow = area * outgassingRate(law, time);
          out.fill(0);
          out[WATER] = wet * flow;
          out[OTHER] = (1 - share) * flow;
        },
      };
    }),
  ];
}

/** Sums of all loads by species, kept for the time that was asked for last: the stages of a step ask again and again. */
export function summedLoads(loads: readonly TimedLoad[]): (time: number) => Float64Array {
  const sum = new Float64Array(SPECIES_COUNT);
  const one = new Float64Array(SPECIES_COUNT);
  let at = NaN;
  return (time) => {
    if (time === at) return sum;
    at = time;
    sum.fill(0);
    for (const { flowInto } of loads) {
      flowInto(one, time);
      for (let i = 0; i < SPECIES_COUNT; i++) sum[i]! += one[i]!;
    }
    return sum;
  };
}
