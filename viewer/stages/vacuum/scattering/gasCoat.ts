/** The coat of a plant laid through its residual gas: atoms followed one by one, added to the straight part. */
import { faceWeights } from '../../../../engine/coat/faceWeights.ts';
import { coatInGas, type CoatInGas } from '../../../../engine/gas/coatInGas.ts';
import { scatter, type ChunkRunner, type ScatterResult } from '../../../../engine/gas/scatter.ts';
import { scatterProblemOf } from '../../../../engine/gas/scatterProblem.ts';
import type { Coat } from '../../../../engine/index.ts';
import type { Control } from '../../../../engine/transport/transport.ts';
import { residualGas } from '../gas/residualGas.ts';
import { straightPart } from './straightPart.ts';

export interface GasCoatOptions {
  /** Pa; that of the shot unless given */
  readonly pressure?: number;
  /** largest standard error wanted of a cell's scattered part, over the mean */
  readonly wantedError: number;
  /** atoms after which to stop in any case */
  readonly mostAtoms: number;
  readonly seed: number;
  readonly run: ChunkRunner;
  readonly control: Control;
}

export interface GasCoat {
  /** the coat in vacuum that it was made from */
  readonly vacuum: Coat;
  /** Pa */
  readonly pressure: number;
  readonly scattered: ScatterResult;
  readonly inGas: CoatInGas;
}

/** Share of the progress that the atoms take; the straight part takes the rest. */
const ATOMS_SHARE = 0.95;

/**
 * Follows atoms until the error is reached, then adds the straight part.
 *
 * @throws RangeError if nothing evaporates
 */
export async function gasCoat(coat: Coat, options: GasCoatOptions): Promise<GasCoat> {
  const { plant, face } = coat;
  const { wantedError, mostAtoms, seed, run, control, pressure = plant.vacuum.pressure } = options;
  const gas = residualGas(plant.vacuum, pressure);
  const problem = scatterProblemOf(plant, { gas, seed });
  const scattered = await scatter(problem, {
    wantedError,
    maxAtoms: mostAtoms,
    run,
    control: { step: (share) => control.step(ATOMS_SHARE * share) },
  });
  const ballistic = await straightPart(coat, gas, (share) => control.step(ATOMS_SHARE + (1 - ATOMS_SHARE) * share));
  const prepared = { face, weights: faceWeights(face), mixed: [] };
  return { vacuum: coat, pressure, scattered, inGas: coatInGas({ prepared, ballistic, scattered, film: plant.film }) };
}
