/** A narrow jet of vapour on the mirror, at rising pressure. */
import type { FilamentSource } from '../../../../engine/emission/filamentSource.ts';
import { firstFlightSurvival } from '../../../../engine/gas/freePath.ts';
import type { Counted } from '../../../../engine/gas/scatterSummary.ts';
import { surfacePointInto } from '../../../../engine/geometry/mirrorShape.ts';
import type { Plant } from '../../../../engine/index.ts';
import { residualGas } from '../../vacuum/gas/residualGas.ts';
import { firstFiring } from '../bench.ts';
import type { Bench, Tools } from '../lesson.ts';
import { fly, shareOnMirror, spotSize, type Flight } from './flights.ts';

/** Pa: so little gas that hardly an atom meets a molecule in any tank. */
export const GOOD_VACUUM = 1e-5;
/** Atoms drawn, and atoms counted. */
export const DRAWN = 150;
const COUNTED = 4096;
/** How far above the pressure of halving the comparison is made. */
export const FAR_ABOVE = 10;
/** Cosine power of the nozzle: half of its vapour leaves within 3.4° of its axis. */
const NARROW = 400;
/** Radius of the place that it is aimed at, over the mirror's. */
const AIMED_AT = 0.55;

export interface RaisedFacts {
  /** a filament of the tank in a nozzle that is aimed at the mirror */
  readonly nozzle: FilamentSource;
  readonly filamentName: string;
  /** Pa, of the design */
  readonly pressure: number;
  /** m, from the nozzle to where it is aimed */
  readonly way: number;
  /** Pa at which half of the vapour is scattered before it gets there */
  readonly halving: number;
  readonly clear: readonly Flight[];
  readonly thick: readonly Flight[];
  /** m, how far landings on the mirror lie from their middle */
  readonly clearSpot: number;
  readonly thickSpot: number;
  /** share of the vapour on the mirror */
  readonly clearShare: Counted;
  readonly thickShare: Counted;
}

/** The place of a filament with all its vapour led toward one place of the mirror on its own side. */
export function nozzleOf({ filaments, shape }: Plant, index: number) {
  const { center } = filaments[index]!;
  const angle = Math.atan2(center[1], center[0] - shape.centerX);
  const radius = Math.max(AIMED_AT * shape.rimRadius, (shape.holeRadius + shape.rimRadius) / 2);
  const target = new Float64Array(3);
  surfacePointInto(
    target,
    new Float64Array(3),
    0,
    shape,
    shape.centerX + radius * Math.cos(angle),
    radius * Math.sin(angle),
  );
  const toTarget = center.map((c, k) => target[k]! - c);
  const way = Math.hypot(...toTarget);
  const source: FilamentSource = {
    count: 1,
    position: Float64Array.from(center),
    axis: Float64Array.from(toTarget, (d) => d / way),
    weight: Float64Array.of(1),
    law: { kind: 'cosine', power: NARROW },
    shield: null,
  };
  return { source, way };
}

/** Pressure at which a share of the vapour has met a molecule after a way, Pa: bisection in the logarithm. */
export function scatteringPressure({ vacuum }: Plant, way: number, share = 0.5): number {
  let [low, high] = [Math.log(1e-9), Math.log(1e5)];
  for (let i = 0; i < 60; i++) {
    const middle = (low + high) / 2;
    if (firstFlightSurvival(residualGas(vacuum, Math.exp(middle)), way) > 1 - share) low = middle;
    else high = middle;
  }
  return Math.exp((low + high) / 2);
}

export async function raisedFacts({ plant }: Bench, { step, fly: run }: Tools): Promise<RaisedFacts> {
  const filament = firstFiring(plant);
  const { source, way } = nozzleOf(plant, filament);
  const halving = scatteringPressure(plant, way);
  const quarter = (i: number) => ({ step: async (share: number) => step((i + share) / 4), ...(run && { fly: run }) });
  const drawn = { source, count: DRAWN };
  const counted = { source, count: COUNTED };
  const thickly = FAR_ABOVE * halving;
  const clear = await fly(plant, { ...drawn, pressure: GOOD_VACUUM }, quarter(0));
  const thick = await fly(plant, { ...drawn, pressure: thickly }, quarter(1));
  return {
    nozzle: source,
    filamentName: plant.filaments[filament]!.name,
    pressure: plant.vacuum.pressure,
    way,
    halving,
    clear,
    thick,
    clearSpot: spotSize(clear),
    thickSpot: spotSize(thick),
    clearShare: await shareOnMirror(plant, { ...counted, pressure: GOOD_VACUUM }, quarter(2)),
    thickShare: await shareOnMirror(plant, { ...counted, pressure: thickly }, quarter(3)),
  };
}
