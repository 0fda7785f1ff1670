/** The pump-down of a plant, with what it says. */
import type { Plant } from '../../../../engine/index.ts';
import { verdictOf, whatHelps, type Help, type PumpDownVerdict } from '../../../../engine/vacuum/limits.ts';
import { pumpDown } from '../../../../engine/vacuum/pumpDown.ts';
import type { PumpDownCurve } from '../../../../engine/vacuum/pumpDownCurve.ts';
import { pumpSystem, type PumpSystem } from '../../../../engine/vacuum/system.ts';
import type { VacuumWords } from '../../../../engine/vacuum/words.ts';

export interface PumpingCase {
  readonly system: PumpSystem;
  readonly curve: PumpDownCurve;
  readonly verdict: PumpDownVerdict;
}

/** The pump-down that a design describes; null if it describes none. */
export function pumpingCase(plant: Plant, words: VacuumWords): PumpingCase | null {
  const system = pumpSystem(plant);
  if (!system) return null;
  const curve = pumpDown(system);
  return { system, curve, verdict: verdictOf(system, curve, words) };
}

/** Changes worth a try, the most helpful first; those without effect are left out. */
export function helpsOf({ system, curve }: PumpingCase): readonly Help[] {
  return whatHelps(system, curve).filter(({ verdict }) => verdict !== 'no help');
}
