/** Scenes and gases for tests of scattering. */
import type { FilamentSource } from '../../../engine/emission/filamentSource.ts';
import { DEFAULT_VAPOUR } from '../../../engine/gas/freePath.ts';
import { pureGas, type GasState } from '../../../engine/gas/gases.ts';
import type { ScatterChoices, ScatterProblem } from '../../../engine/gas/scatterProblem.ts';
import type { TallyGrid } from '../../../engine/gas/tallyGrid.ts';
import type { MirrorShape } from '../../../engine/geometry/mirrorShape.ts';
import { packSolids, type Solids } from '../../../engine/geometry/solids.ts';
import type { Triangles } from '../../../engine/geometry/stl.ts';
import type { Tank } from '../../../engine/geometry/tank.ts';
import { pointSource, shapeOf } from '../../support/plants.ts';

export const ROOM = 293.15;
export const VACUUM: GasState = pureGas('air', 0, ROOM);
/** Few, large cells: each catches enough atoms in a short test. */
export const COARSE: TallyGrid = { rings: 4, sectors: 6, sideBands: 4, endRings: 2 };

export interface Bench extends ScatterChoices {
  readonly shape?: MirrorShape;
  readonly tank?: Tank;
  readonly solids?: Solids;
  readonly meshes?: readonly Triangles[];
  readonly sources?: readonly FilamentSource[];
}

/** A concave mirror of 1 m radius in a tank of 1.3 m radius, one small isotropic source over it, no gas. */
export function benchProblem(bench: Bench = {}): ScatterProblem {
  const {
    shape = shapeOf({ curvature: 1 / 6, conicConstant: -1, holeRadius: 0.2 }),
    tank = { radius: 1.3, centerX: 0, lowZ: -0.3, highZ: 1.4 },
    solids = packSolids([]),
    meshes = [],
    sources = [pointSource({ kind: 'isotropic' }, [0.3, -0.2, 0.8])],
    ...choices
  } = bench;
  return {
    scene: { key: 'bench', shape, tank, solids, meshes, perFreePath: 0 },
    sources,
    masses: new Float64Array(sources.length).fill(1e-3),
    gas: VACUUM,
    vapour: DEFAULT_VAPOUR,
    grid: COARSE,
    seed: 1,
    leaps: true,
    ...choices,
  };
}
