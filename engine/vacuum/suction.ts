/** What the open pumps together take from the tank, and what comes back from them, against pressure. */
import { logTable, NODE_COUNT, readLogTableInto, type LogTable } from './logTable.ts';
import type { Pump } from './pumps.ts';
import { OTHER, SPECIES_COUNT, WATER } from './species.ts';

/** Values at one pressure. */
export interface SuctionReading {
  /** m³/s by species */
  readonly speed: Float64Array;
  /** dspeed/dp, m³/(s·Pa) */
  readonly slope: Float64Array;
  /** Pa·m³/s that comes back, and its slope against pressure */
  backflow: number;
  backflowSlope: number;
}

/** The pumps whose valves are open. */
export interface Suction {
  /** names of the open pumps */
  readonly open: readonly string[];
  /** fills the reading at a total pressure, Pa */
  readonly readInto: (out: SuctionReading, pressure: number) => void;
}

/** An empty reading. */
export function suctionReading(): SuctionReading {
  return {
    speed: new Float64Array(SPECIES_COUNT),
    slope: new Float64Array(SPECIES_COUNT),
    backflow: 0,
    backflowSlope: 0,
  };
}

/**
 * Sums the open pumps. While a Roots pump runs, rotary pumps stand behind it and take nothing by themselves.
 *
 * A pump that reaches only its ultimate pressure pᵤ moves S·(p − pᵤ): S·p into it and S·pᵤ back.
 *
 * @param trapSpeed [m³/s] for water, of a cold trap
 */
export function suctionOf(open: readonly Pump[], trapSpeed: number): Suction {
  const hasRoots = open.some(({ kind }) => kind === 'roots');
  const pumping = open.filter(({ kind }) => !(hasRoots && kind === 'rotary'));
  const sums = Array.from({ length: SPECIES_COUNT }, () => new Float64Array(NODE_COUNT));
  sums[WATER]!.fill(trapSpeed);
  const back = new Float64Array(NODE_COUNT);
  for (const { speeds, ultimate } of pumping) {
    speeds.forEach((table, species) => table.forEach((speed, i) => (sums[species]![i]! += speed)));
    speeds[OTHER]!.forEach((speed, i) => (back[i]! += speed * ultimate));
  }
  const tables: readonly LogTable[] = sums.map(logTable);
  const backTable = logTable(back);
  const pair = new Float64Array(2);
  return {
    open: open.map(({ name }) => name),
    readInto: (out, pressure) => {
      for (let i = 0; i < SPECIES_COUNT; i++) {
        readLogTableInto(pair, tables[i]!, pressure);
        out.speed[i] = pair[0]!;
        out.slope[i] = pair[1]! / pressure;
      }
      readLogTableInto(pair, backTable, pressure);
      out.backflow = pair[0]!;
      out.backflowSlope = pair[1]! / pressure;
    },
  };
}
