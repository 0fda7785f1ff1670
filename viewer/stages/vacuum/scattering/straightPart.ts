/** The part of a coat that arrives without a collision: the coat in vacuum, thinned by the gas on each line of sight. */
import { DEFAULT_VAPOUR, perFreePath } from '../../../../engine/gas/freePath.ts';
import type { GasState } from '../../../../engine/gas/gases.ts';
import { throwOf } from '../../../../engine/gas/gasReport.ts';
import type { FilamentSource } from '../../../../engine/emission/filamentSource.ts';
import type { Coat, Plant } from '../../../../engine/index.ts';
import { evaporatedMasses } from '../../../../engine/plant/plant.ts';
import { createPlainKernel, RUN } from '../../../../engine/transport/depositKernel.ts';

/** Filaments that evaporate, each weighted by its mass. */
function weightedSources(plant: Plant): readonly FilamentSource[] {
  const masses = evaporatedMasses(plant);
  return plant.filaments.flatMap(({ source }, f) =>
    masses[f]! > 0 ? [{ ...source, weight: source.weight.map((weight) => weight * masses[f]!) }] : [],
  );
}

/**
 * Mass that arrives without a collision.
 *
 *     μ = μ_vacuum · Σ m I cosθ/r² e^(−r/λ) / Σ m I cosθ/r²
 *
 * Shadows enter through the coat in vacuum; the mean over the lines of sight takes all of them as open. Error: exact
 * without shadows; where some are hidden the lengths of the open ones differ from the mean by a few percent, and the
 * thinning by that share of itself.
 *
 * @param step called after each run of points; may wait
 * @returns [points] kg/m², before sticking
 */
export async function straightPart(
  coat: Coat,
  gas: GasState,
  step: (share: number) => void | Promise<void>,
): Promise<Float64Array> {
  const { plant, face, thickness } = coat;
  const { density, sticking } = plant.film;
  const inverse = perFreePath(gas, DEFAULT_VAPOUR, throwOf(plant).mean);
  const kernel = createPlainKernel();
  const sources = weightedSources(plant);
  // sums at a run of points, as if nothing stood between
  const sumInto = (out: Float64Array, begin: number, end: number, per: number): void => {
    kernel.load(face.points, begin, end, per);
    for (const source of sources) for (let j = 0; j < source.count; j++) kernel.addPastShield(source, j);
    kernel.readInto(out);
  };
  const [open, thinned] = [new Float64Array(RUN), new Float64Array(RUN)];
  const areal = thickness.map((value) => (sticking > 0 ? (value * density) / sticking : 0));
  for (let begin = 0; begin < face.points.count; begin += RUN) {
    const end = Math.min(begin + RUN, face.points.count);
    sumInto(open, begin, end, 0);
    sumInto(thinned, begin, end, inverse);
    for (let i = begin; i < end; i++) areal[i]! *= open[i - begin]! > 0 ? thinned[i - begin]! / open[i - begin]! : 0;
    await step(begin / face.points.count);
  }
  return areal;
}
