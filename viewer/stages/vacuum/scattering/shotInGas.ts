/** A coat through gas beside the one in vacuum that it is compared with. */
import { gasCoat, type GasCoat } from '../../../../engine/gas/gasCoat.ts';
import type { ChunkRunner } from '../../../../engine/gas/scatter.ts';
import type { Coat, Evaluator } from '../../../../engine/index.ts';
import type { Control } from '../../../../engine/transport/transport.ts';
import { residualGas } from '../gas/residualGas.ts';

export interface ShotInGas extends GasCoat {
  /** the coat in a perfect vacuum */
  readonly vacuum: Coat;
  /** Pa */
  readonly pressure: number;
}

export interface ShotOptions {
  /** Pa; that of the shot unless given */
  readonly pressure?: number;
  /** largest standard error wanted of a cell's scattered part, over the mean */
  readonly wantedError: number;
  /** atoms after which to stop in any case */
  readonly mostAtoms: number;
  readonly seed: number;
  readonly evaluator: Evaluator;
  readonly run: ChunkRunner;
}

/**
 * Follows atoms until the error is reached, and adds what arrives straight.
 *
 * @throws RangeError if nothing evaporates
 */
export async function shotInGas(vacuum: Coat, options: ShotOptions, control: Control): Promise<ShotInGas> {
  const { plant } = vacuum;
  const { pressure = plant.vacuum.pressure, wantedError, mostAtoms, seed, evaluator, run } = options;
  const choices = { gas: residualGas(plant.vacuum, pressure), seed };
  const made = await gasCoat(evaluator, plant, { choices, wantedError, maxAtoms: mostAtoms, run }, control);
  return { ...made, vacuum, pressure };
}
