/** What a tally says: shares with standard errors, and the mass that each cell of the mirror caught. */
import type { ScatterProblem } from './scatterProblem.ts';
import type { ScatterTally } from './tally.ts';
import { faceCellAreas, slotsOf } from './tallyGrid.ts';

/** A number from counted atoms. */
export interface Counted {
  readonly value: number;
  readonly standardError: number;
}

/** Where vapour ended, as shares of all that was evaporated. */
export interface PlaceShare {
  readonly kind:
    'mirror' | 'tank side' | 'end behind the mirror' | 'end before the mirror' | 'glass' | 'shields' | 'obstacle';
  /** index among the obstacles, in the order of casters; 0 elsewhere */
  readonly obstacle: number;
  /** on its first flight */
  readonly ballistic: Counted;
  /** after one collision or more */
  readonly scattered: Counted;
}

/** The mirror's cells (index = sector · rings + ring; see TallyGrid). */
export interface FaceCells {
  /** [cells] m², on the curved face */
  readonly areas: Float64Array;
  /** [cells] kg/m² that arrived on a first flight */
  readonly ballistic: Float64Array;
  /** [cells] kg/m² that arrived scattered */
  readonly scattered: Float64Array;
  /** [cells] their standard errors */
  readonly ballisticError: Float64Array;
  readonly scatteredError: Float64Array;
}

export interface ScatterSummary {
  readonly atoms: number;
  /** collisions computed per atom; where leaps were taken the atoms made more */
  readonly collisionsPerAtom: number;
  readonly leapsPerAtom: number;
  /** kg of vapour that one atom of the calculation stands for */
  readonly massPerAtom: number;
  /** share of the vapour that ends on its first flight, wherever that is */
  readonly unscattered: Counted;
  /** share that reaches the mirror straight, and scattered */
  readonly ballisticOnMirror: Counted;
  readonly scatteredOnMirror: Counted;
  /** share that ends anywhere but on the mirror */
  readonly lost: Counted;
  readonly places: readonly PlaceShare[];
  readonly cells: FaceCells;
  /** largest standard error of a cell's scattered part over the mean of all that the mirror caught, 1 */
  readonly cellError: number;
}

/**
 * A share from a count, its standard error by the binomial law.
 *
 *     p = n/N,  σ = √(q (1 − q)/N),  q = (n + 1)/(N + 2): so that none in N is not "none for sure"
 */
function shareOf(count: number, atoms: number): Counted {
  const q = (count + 1) / (atoms + 2);
  return { value: count / atoms, standardError: Math.sqrt((q * (1 - q)) / atoms) };
}

const sumOf = (values: Float64Array, from: number, to: number): number =>
  values.subarray(from, to).reduce((sum, value) => sum + value, 0);

function placesOf({ ballistic, scattered, atoms }: ScatterTally, { scene, grid }: ScatterProblem): PlaceShare[] {
  const obstacleCount = scene.solids.count + scene.meshes.length;
  const slots = slotsOf(grid, obstacleCount);
  const place = (kind: PlaceShare['kind'], from: number, to: number, obstacle = 0): PlaceShare => ({
    kind,
    obstacle,
    ballistic: shareOf(sumOf(ballistic, from, to), atoms),
    scattered: shareOf(sumOf(scattered, from, to), atoms),
  });
  return [
    place('mirror', slots.face, slots.side),
    place('tank side', slots.side, slots.lowEnd),
    place('end behind the mirror', slots.lowEnd, slots.highEnd),
    place('end before the mirror', slots.highEnd, slots.body),
    place('glass', slots.body, slots.shield),
    place('shields', slots.shield, slots.obstacles),
    ...Array.from({ length: obstacleCount }, (_, i) =>
      place('obstacle', slots.obstacles + i, slots.obstacles + i + 1, i),
    ),
  ];
}

/** Largest standard error of a cell's scattered part over the mean of all that the mirror caught. */
export function cellErrorOf({ ballistic, scattered }: ScatterTally, areas: Float64Array): number {
  let caught = 0;
  let area = 0;
  let largest = 0;
  for (let c = 0; c < areas.length; c++) {
    caught += ballistic[c]! + scattered[c]!;
    area += areas[c]!;
    largest = Math.max(largest, Math.sqrt(Math.max(1, scattered[c]!)) / areas[c]!);
  }
  return (largest * area) / caught;
}

/** Puts a tally into shares and masses. */
export function summarise(problem: ScatterProblem, tally: ScatterTally): ScatterSummary {
  const { atoms, ballistic, scattered } = tally;
  const areas = faceCellAreas(problem.grid, problem.scene.shape);
  const cellCount = areas.length;
  const evaporated = problem.masses.reduce((sum, mass) => sum + mass, 0);
  const massPerAtom = evaporated / atoms;
  const areal = (counts: Float64Array): Float64Array => areas.map((area, c) => (counts[c]! * massPerAtom) / area);
  const arealError = (counts: Float64Array): Float64Array =>
    areas.map((area, c) => (Math.sqrt(Math.max(1, counts[c]!)) * massPerAtom) / area);
  const straight = sumOf(ballistic, 0, cellCount);
  const astray = sumOf(scattered, 0, cellCount);
  return {
    atoms,
    collisionsPerAtom: tally.collisions / atoms,
    leapsPerAtom: tally.leaps / atoms,
    massPerAtom,
    unscattered: shareOf(sumOf(ballistic, 0, ballistic.length), atoms),
    ballisticOnMirror: shareOf(straight, atoms),
    scatteredOnMirror: shareOf(astray, atoms),
    lost: shareOf(atoms - straight - astray, atoms),
    places: placesOf(tally, problem),
    cells: {
      areas,
      ballistic: areal(ballistic),
      scattered: areal(scattered),
      ballisticError: arealError(ballistic),
      scatteredError: arealError(scattered),
    },
    cellError: cellErrorOf(tally, areas),
  };
}
