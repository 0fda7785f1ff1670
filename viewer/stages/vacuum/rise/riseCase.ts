/** A rate-of-rise test on the page: its readings, the tank's volume, and what they say. */
import type { Plant } from '../../../../engine/index.ts';
import { rateOfRise, type RiseFit } from '../../../../engine/vacuum/rateOfRise.ts';
import { tankSpace } from '../../../../engine/vacuum/tankSpace.ts';
import type { PressureReading } from '../../../../engine/vacuum/readings.ts';
import type { VacuumWords } from '../../../../engine/vacuum/words.ts';

export interface RiseCase {
  readonly readings: readonly PressureReading[];
  /** m³ */
  readonly volume: number;
  readonly fit: RiseFit | null;
  /** why there is no fit */
  readonly reasons: readonly string[];
}

/** The free volume of the tank: as its pumping system says, else from its geometry. */
export function tankVolume(plant: Plant): number {
  return plant.vacuum.system?.volume ?? tankSpace(plant).volume;
}

/** What readings say; null if there are none. */
export function riseCase(plant: Plant, readings: readonly PressureReading[], words: VacuumWords): RiseCase | null {
  if (readings.length === 0) return null;
  const volume = tankVolume(plant);
  const result = rateOfRise(readings, volume, words);
  return result.ok
    ? { readings, volume, fit: result.fit, reasons: [] }
    : { readings, volume, fit: null, reasons: result.faults.map(({ message }) => message) };
}
