/** One filament's vapour at rising pressure. */
import { firstFlightSurvival } from '../../../../engine/gas/freePath.ts';
import type { Counted } from '../../../../engine/gas/scatterSummary.ts';
import { residualGas } from '../../vacuum/gas/residualGas.ts';
import { firstFiring } from '../bench.ts';
import type { Bench, Tools } from '../lesson.ts';
import { fly, meanThrow, shareOnMirror, spotSize, type Flight } from './flights.ts';

/** Pa: so little gas that hardly an atom meets a molecule in any tank. */
export const GOOD_VACUUM = 1e-5;
/** Atoms drawn, and atoms counted. */
export const DRAWN = 150;
const COUNTED = 4096;
/** How far above the pressure of halving the comparison is made. */
export const FAR_ABOVE = 10;

export interface RaisedFacts {
  readonly filament: number;
  readonly filamentName: string;
  /** Pa, of the design */
  readonly pressure: number;
  /** m */
  readonly meanThrow: number;
  /** Pa at which half of the vapour is scattered before it has flown the mean throw */
  readonly halving: number;
  readonly clear: readonly Flight[];
  readonly thick: readonly Flight[];
  /** m, how far landings on the mirror lie from their middle */
  readonly clearSpot: number;
  readonly thickSpot: number;
  /** share of the filament's vapour on the mirror */
  readonly clearShare: Counted;
  readonly thickShare: Counted;
}

/** Pressure at which a share of the vapour has met a molecule after a way, Pa: bisection in the logarithm. */
export function scatteringPressure({ plant }: Bench, way: number, share = 0.5): number {
  let [low, high] = [Math.log(1e-9), Math.log(1e5)];
  for (let i = 0; i < 60; i++) {
    const middle = (low + high) / 2;
    const survival = firstFlightSurvival(residualGas(plant.vacuum, Math.exp(middle)), way);
    if (survival > 1 - share) low = middle;
    else high = middle;
  }
  return Math.exp((low + high) / 2);
}

export async function raisedFacts(bench: Bench, { step }: Tools): Promise<RaisedFacts> {
  const { plant } = bench;
  const filament = firstFiring(plant);
  const quarter = (i: number) => ({ step: async (share: number) => step((i + share) / 4) });
  const at = (pressure: number) => ({ pressure, only: filament });
  const clear = await fly(plant, { ...at(GOOD_VACUUM), count: DRAWN }, quarter(0));
  const way = meanThrow(clear);
  const halving = scatteringPressure(bench, way);
  const thickPressure = FAR_ABOVE * halving;
  const thick = await fly(plant, { ...at(thickPressure), count: DRAWN }, quarter(1));
  const clearShare = await shareOnMirror(plant, { ...at(GOOD_VACUUM), count: COUNTED }, quarter(2));
  const thickShare = await shareOnMirror(plant, { ...at(thickPressure), count: COUNTED }, quarter(3));
  return {
    filament,
    filamentName: plant.filaments[filament]!.name,
    pressure: plant.vacuum.pressure,
    meanThrow: way,
    halving,
    clear,
    thick,
    clearSpot: spotSize(clear),
    thickSpot: spotSize(thick),
    clearShare,
    thickShare,
  };
}
