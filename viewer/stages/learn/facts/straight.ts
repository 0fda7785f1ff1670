/** Atoms in the vacuum of the design. */
import { firstFlightSurvival, perFreePath, vapourSpeeds } from '../../../../engine/gas/freePath.ts';
import { residualGas } from '../../vacuum/gas/residualGas.ts';
import { firstFiring } from '../bench.ts';
import type { Bench, Tools } from '../lesson.ts';
import { fly, meanThrow, type Flight } from './flights.ts';

const COUNT = 200;

export interface StraightFacts {
  /** Pa */
  readonly pressure: number;
  readonly flights: readonly Flight[];
  /** flights that met at least one molecule, and that ended on the mirror */
  readonly met: number;
  readonly onMirror: number;
  /** m, straight ways to the mirror, on average */
  readonly meanThrow: number;
  /** m, that an aluminium atom flies between collisions */
  readonly freePath: number;
  /** share that flies the mean throw without a collision, by formula */
  readonly survival: number;
  /** m/s */
  readonly speed: number;
  /** s, for the mean throw at the mean speed */
  readonly time: number;
}

/** Mean speed of vapour that leaves a filament, m/s. */
export function meanVapourSpeed(): number {
  const { speeds, weights } = vapourSpeeds();
  return speeds.reduce((sum, speed, i) => sum + speed * weights[i]!, 0);
}

export async function straightFacts({ plant }: Bench, tools: Tools): Promise<StraightFacts> {
  firstFiring(plant);
  const gas = residualGas(plant.vacuum);
  const flights = await fly(plant, { pressure: gas.pressure, count: COUNT }, tools);
  const way = meanThrow(flights);
  const speed = meanVapourSpeed();
  return {
    pressure: gas.pressure,
    flights,
    met: flights.filter(({ collisions }) => collisions > 0).length,
    onMirror: flights.filter(({ landing }) => landing === 'mirror').length,
    meanThrow: way,
    freePath: 1 / perFreePath(gas),
    survival: firstFlightSurvival(gas, way),
    speed,
    time: way / speed,
  };
}
