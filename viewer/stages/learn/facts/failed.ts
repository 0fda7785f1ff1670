/** A filament that does not fire, or a whole feed. */
import type { Coat, Plant } from '../../../../engine/index.ts';
import { firing } from '../bench.ts';
import type { Bench, Tools } from '../lesson.ts';
import { ringCoat, ringRoom } from './rings.ts';

const POINTS = 3000;
/** A tank with fewer filaments than this borrows a ring: with one filament there is no coat left to look at. */
const FEWEST = 3;

/** A plant in which some filaments stay cold. */
export function withCold(plant: Plant, cold: ReadonlySet<number>, factor = 1): Plant {
  return {
    ...plant,
    filaments: plant.filaments.map((filament, i) =>
      cold.has(i) ? { ...filament, outOfUse: true } : { ...filament, charge: filament.charge * factor },
    ),
  };
}

/** Share of the coat that is missing at each point of the map. */
export function missingShare(full: Coat, failed: Coat): Float64Array {
  return full.thickness.map((value, i) => (value > 0 ? 1 - failed.thickness[i]! / value : 0));
}

/** The filament and those of its feed, by index; a filament without a feed stands alone. */
export function feedOf({ filaments }: Plant, index: number): number[] {
  const own = filaments[index]!;
  return filaments.flatMap(({ feed, set }, i) =>
    i === index || (own.feed !== null && feed === own.feed && set === own.set) ? [i] : [],
  );
}

export interface FailedFacts {
  readonly plant: Plant;
  /** whether the plant is the tank's own, or has the ring that the lesson lends it */
  readonly isBorrowed: boolean;
  readonly count: number;
  /** index of the filament that fails */
  readonly cold: number;
  readonly coldName: string;
  readonly full: Coat;
  readonly failed: Coat;
  /** its feed dead: null if it has none or is alone on it */
  readonly feedSize: number;
  readonly feedFailed: Coat | null;
  /** the other filaments carry its aluminium too */
  readonly refilled: Coat;
  /** largest share of the coat missing anywhere */
  readonly deepest: number;
  readonly feedDeepest: number;
}

export const failedCoat = async (
  { evaluate }: Pick<Tools, 'evaluate'>,
  plant: Plant,
  cold: readonly number[],
  factor = 1,
): Promise<Coat> => evaluate(withCold(plant, new Set(cold), factor), { points: POINTS, rays: 0 });

/** The ring of the lesson on rings, charged so that its coat is as thick as the design wants on average. */
async function lentRing(bench: Bench, tools: Tools): Promise<Plant> {
  const { plant, statistics } = await ringCoat(bench, tools, 'ring', ringRoom(bench).first);
  return withCold(plant, new Set(), plant.film.target / statistics.mean.value);
}

export async function failedFacts(bench: Bench, tools: Tools): Promise<FailedFacts> {
  const isBorrowed = firing(bench.plant).length < FEWEST;
  const plant = isBorrowed ? await lentRing(bench, tools) : bench.plant;
  const live = firing(plant);
  const cold = live[0]!;
  const full = await failedCoat(tools, plant, []);
  await tools.step(0.25);
  const failed = await failedCoat(tools, plant, [cold]);
  await tools.step(0.5);
  const mass = live.reduce((sum, i) => sum + plant.filaments[i]!.charge, 0);
  const refilled = await failedCoat(tools, plant, [cold], mass / (mass - plant.filaments[cold]!.charge));
  await tools.step(0.75);
  const feed = feedOf(plant, cold);
  const hasFeed = feed.length > 1 && feed.length < live.length;
  const feedFailed = hasFeed ? await failedCoat(tools, plant, feed) : null;
  return {
    plant,
    isBorrowed,
    count: live.length,
    cold,
    coldName: plant.filaments[cold]!.name,
    full,
    failed,
    feedSize: hasFeed ? feed.length : 1,
    feedFailed,
    refilled,
    deepest: Math.max(...missingShare(full, failed)),
    feedDeepest: feedFailed ? Math.max(...missingShare(full, feedFailed)) : 0,
  };
}
