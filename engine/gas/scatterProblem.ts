/** What a scattering calculation is asked, as plain data that can be sent to a worker, and the same ready for flights. */
import type { FilamentSource } from '../emission/filamentSource.ts';
import { casterCount } from '../geometry/scene.ts';
import { evaporatedMasses, type Plant } from '../plant/plant.ts';
import { buildScene } from '../transport/buildScene.ts';
import { sceneDataOf } from '../transport/plantRequests.ts';
import type { SceneData } from '../transport/transport.ts';
import { createBall, type Ball } from './ball.ts';
import { clearanceOf, type Clearance } from './clearance.ts';
import { createAtom, encountersOf, type Atom, type Encounters } from './collisions.ts';
import { ALUMINIUM_MASS } from './constants.ts';
import { emittersOf, type Emitters } from './emitters.ts';
import { DEFAULT_VAPOUR, type VapourModel } from './freePath.ts';
import type { GasState } from './gases.ts';
import { leapsOf, type Leaps } from './leaps.ts';
import { flightSceneOf, type FlightScene } from './nearestHit.ts';
import { createRandom, type Random } from './random.ts';
import { probableSpeed } from './speeds.ts';
import { DEFAULT_GRID, slotsOf, type Slots, type TallyGrid } from './tallyGrid.ts';

/** One shot in one gas: everything that decides where each atom ends. */
export interface ScatterProblem {
  readonly scene: SceneData;
  readonly sources: readonly FilamentSource[];
  /** [sources] kg evaporated */
  readonly masses: Float64Array;
  readonly gas: GasState;
  readonly vapour: VapourModel;
  readonly grid: TallyGrid;
  /** whole number, of which 32 bits count */
  readonly seed: number;
  /** whether long diffusion is taken in leaps (see leaps.ts); without them bad vacuum takes very long */
  readonly leaps: boolean;
}

/** What the caller may choose beside the plant. */
export type ScatterChoices = Partial<Pick<ScatterProblem, 'gas' | 'vapour' | 'grid' | 'seed' | 'leaps'>>;

/** The residual gas of a plant's shot. */
export function plantGas({ vacuum }: Pick<Plant, 'vacuum'>): GasState {
  const { pressure, temperature, gas, mixture } = vacuum;
  const shares = mixture ? Object.fromEntries(mixture.map((part) => [part.gas, part.share])) : { [gas]: 1 };
  return { pressure, temperature, mixture: shares };
}

/** The problem of a plant's shot in its own residual gas, unless told otherwise. */
export function scatterProblemOf(plant: Plant, choices: ScatterChoices = {}): ScatterProblem {
  return {
    scene: sceneDataOf(plant),
    sources: plant.filaments.map(({ source }) => source),
    masses: evaporatedMasses(plant),
    gas: plantGas(plant),
    vapour: DEFAULT_VAPOUR,
    grid: DEFAULT_GRID,
    seed: 1,
    leaps: true,
    ...choices,
  };
}

/** A problem ready for flights, with the room that one thread needs. */
export interface PreparedScatter {
  readonly problem: ScatterProblem;
  readonly flight: FlightScene;
  readonly clearance: Clearance;
  readonly emitters: Emitters;
  readonly encounters: Encounters;
  readonly leaps: Leaps;
  readonly slots: Slots;
  /** most probable speed of the vapour, m/s */
  readonly vapourProbable: number;
  readonly atom: Atom;
  readonly ball: Ball;
  readonly random: Random;
}

/**
 * Prepares a problem; meshes are built here.
 *
 * @throws RangeError if nothing evaporates or the gas is none
 */
export async function prepareScatter(problem: ScatterProblem): Promise<PreparedScatter> {
  const encounters = encountersOf(problem.gas, problem.vapour);
  const emitters = emittersOf(problem.sources, problem.masses);
  const scene = await buildScene(problem.scene);
  return {
    problem,
    flight: flightSceneOf(scene),
    clearance: clearanceOf(scene),
    emitters,
    encounters,
    leaps: leapsOf(encounters, problem.leaps),
    slots: slotsOf(problem.grid, casterCount(scene)),
    vapourProbable: probableSpeed(problem.vapour.temperature, ALUMINIUM_MASS),
    atom: createAtom(),
    ball: createBall(),
    random: createRandom(),
  };
}
