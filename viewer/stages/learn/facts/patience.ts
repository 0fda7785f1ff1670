/** Wait or fire: the pump-down of the tank, and how clean a film it would give at each moment. */
import { arrivalRatio } from '../../../../engine/gas/contamination.ts';
import type { GasState } from '../../../../engine/gas/gases.ts';
import { pumpDown } from '../../../../engine/vacuum/pumpDown.ts';
import type { PumpDownCurve } from '../../../../engine/vacuum/pumpDownCurve.ts';
import { AIR, OTHER, WATER } from '../../../../engine/vacuum/species.ts';
import { pumpSystem } from '../../../../engine/vacuum/system.ts';
import type { Bench, Tools } from '../lesson.ts';
import { dirtyFacts } from './dirtyGas.ts';

/** How much worse than the firing pressure the impatient crew fires at. */
export const IMPATIENT = 10;

export interface PatienceFacts {
  readonly curve: PumpDownCurve;
  /** Pa wanted */
  readonly firingPressure: number;
  /** s at which the wanted pressure is reached, and IMPATIENT times it; null if not within the engine's longest time */
  readonly ready: number;
  readonly early: number;
  /** [times] molecules that stay for each aluminium atom if the shot were fired then */
  readonly ratio: Float64Array;
  /** share of water in the gas at the firing pressure */
  readonly waterShare: number;
  /** m/s and kg/m³ of the shot */
  readonly rate: number;
}

/** The gas in the tank at a sample of the curve: what is neither air nor water is counted as nitrogen, as the engine weighs it. */
function gasAt({ partial, pressure }: PumpDownCurve, i: number, temperature: number): GasState {
  const mixture = { air: partial[AIR]![i]!, H2O: partial[WATER]![i]!, N2: partial[OTHER]![i]! };
  return { pressure: pressure[i]!, temperature, mixture };
}

/** Time at which the pressure first falls to a value, s: straight in log pressure; null if it does not. */
export function timeOfPressure({ time, pressure, count }: PumpDownCurve, wanted: number): number | null {
  for (let i = 1; i < count; i++) {
    if (pressure[i]! > wanted) continue;
    const [p0, p1] = [pressure[i - 1]!, pressure[i]!];
    const u = p0 > p1 ? Math.log(p0 / wanted) / Math.log(p0 / p1) : 0;
    return time[i - 1]! + Math.max(0, u) * (time[i]! - time[i - 1]!);
  }
  return null;
}

/** Index of the first sample at or after a time. */
export function indexFrom({ time, count }: PumpDownCurve, t: number): number {
  let i = 0;
  while (i < count - 1 && time[i]! < t) i++;
  return i;
}

export async function patienceFacts(bench: Bench, tools: Tools): Promise<PatienceFacts> {
  const { plant } = bench;
  const system = pumpSystem(plant);
  if (!system)
    throw new RangeError(
      'this design describes no pumping system: add one in the Vacuum stage, or choose the teaching tank',
    );
  const { thickness, duration } = await dirtyFacts(bench, tools);
  await tools.step(0.3);
  const curve = pumpDown(system);
  await tools.step(0.9);
  const early = timeOfPressure(curve, IMPATIENT * system.firingPressure);
  if (curve.reachedAt === null || early === null)
    throw new RangeError(
      'the pumps of this design never reach its firing pressure; the Vacuum stage says what holds them up',
    );
  const rate = thickness / duration;
  const { density } = plant.film;
  const ready = indexFrom(curve, curve.reachedAt);
  return {
    curve,
    firingPressure: system.firingPressure,
    ready: curve.reachedAt,
    early,
    ratio: Float64Array.from(curve.time, (_, i) =>
      arrivalRatio(gasAt(curve, i, plant.vacuum.temperature), rate, density),
    ),
    waterShare: curve.partial[WATER]![ready]! / curve.pressure[ready]!,
    rate,
  };
}
