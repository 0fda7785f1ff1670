/** The coat of a plant laid through residual gas: atoms followed one by one, added to what arrives straight. */
import type { Coat } from '../coat/coat.ts';
import type { EvaluateOptions, Evaluator } from '../coat/evaluateCoat.ts';
import { faceWeights } from '../coat/faceWeights.ts';
import type { Plant } from '../plant/plant.ts';
import { staged } from '../transport/staged.ts';
import type { Control } from '../transport/transport.ts';
import { coatInGas, type CoatInGas } from './coatInGas.ts';
import { perFreePath } from './freePath.ts';
import { throwOf } from './gasReport.ts';
import { scatter, type ScatterOptions, type ScatterResult } from './scatter.ts';
import { scatterProblemOf, type ScatterChoices } from './scatterProblem.ts';

export interface GasCoat {
  /** the straight part alone, as a coat: shadows, and e^(−r·perFreePath) on each line of sight */
  readonly straight: Coat;
  readonly scattered: ScatterResult;
  readonly inGas: CoatInGas;
}

export interface GasCoatOptions extends Omit<ScatterOptions, 'control'>, Pick<EvaluateOptions, 'points'> {
  readonly choices?: ScatterChoices;
}

/** Share of the progress that the straight part takes. */
const STRAIGHT_SHARE = 0.1;

/**
 * Lays a coat through gas: that of the plant's own vacuum unless chosen.
 *
 * @throws RangeError if nothing evaporates
 */
export async function gasCoat(
  evaluator: Evaluator,
  plant: Plant,
  { choices = {}, points, ...scatterOptions }: GasCoatOptions = {},
  control?: Control,
): Promise<GasCoat> {
  const problem = scatterProblemOf(plant, choices);
  const fading = perFreePath(problem.gas, problem.vapour, throwOf(plant).mean);
  const options = { rays: 0, perFreePath: fading, ...(points !== undefined && { points }) };
  const straight = await evaluator.evaluate(plant, options, staged(control, 0, STRAIGHT_SHARE));
  const part = staged(control, STRAIGHT_SHARE, 1);
  const scattered = await scatter(problem, { ...scatterOptions, ...(part && { control: part }) });
  const { face, thickness } = straight;
  const { film } = plant;
  const ballistic = thickness.map((value) => (value * film.density) / film.sticking);
  const prepared = { face, weights: faceWeights(face), mixed: [] };
  return { straight, scattered, inGas: coatInGas({ prepared, ballistic, scattered, film }) };
}
