/** Shadows of filaments that are each other turned: those of one, turned as often, where nothing breaks the symmetry. */
import { isSameSource, turnedToZero, type Turned } from '../field/rotation.ts';
import type { Face } from '../geometry/face.ts';
import { sectorsOf, turnsOf } from '../geometry/turns.ts';
import type { KeyedSource, SceneData } from '../transport/transport.ts';

/** Filaments that a turn of the whole scene brings to where the first of them is. */
export interface TurnedFilaments {
  /** index of the first */
  readonly lead: number;
  readonly members: readonly {
    /** index of the filament */
    readonly filament: number;
    /** by how many nodes of the face its column is that of the first one further on */
    readonly shift: number;
  }[];
}

/** What obstacles hide of some filaments: see DepositResult. */
export interface Hidden {
  /** [points] kg/m² */
  readonly sum: Float64Array;
  /** [points] */
  readonly signature: Uint32Array;
}

/** Columns asked for one by one at most: each costs a message to every worker. */
const MOST_LEADS = 8;
/** A turn is a whole number of sectors if it is off by less than this share of one. */
const SAME_SHARE = 1e-9;

/**
 * Sorts filaments by turns that leave obstacles, mirror and the nodes of the face's grid as they are.
 *
 * @param face not refined
 * @returns null where it would not pay
 */
export function turnedFilaments(
  { grid, radialCount, azimuthCount }: Face,
  { solids, meshes, shape }: SceneData,
  sources: readonly KeyedSource[],
): TurnedFilaments[] | null {
  const turns = meshes.length > 0 ? 1 : turnsOf(solids, sectorsOf(grid));
  if (turns === 1) return null;
  const nodesPerTurn = (radialCount * azimuthCount) / turns;
  const found: {
    readonly lead: number;
    readonly place: Place;
    readonly members: TurnedFilaments['members'][number][];
  }[] = [];
  for (const [filament, { source }] of sources.entries()) {
    const place = placeOf(turnedToZero(source, shape), turns);
    let own = found.find((one) => isTwin(one.place, place, shape.rimRadius));
    if (!own) {
      own = { lead: filament, place, members: [] };
      if (found.push(own) > MOST_LEADS) return null;
    }
    own.members.push({ filament, shift: ((place.turns - own.place.turns + turns) % turns) * nodesPerTurn });
  }
  return 2 * found.length <= sources.length ? found : null;
}

/** Where a filament stands: whole turns from azimuth 0, and what is left, as a share of a turn. */
interface Place {
  readonly source: Turned['source'];
  readonly turns: number;
  readonly rest: number;
}

function placeOf({ source, angle }: Turned, turns: number): Place {
  const way = ((angle / (2 * Math.PI)) * turns + turns) % turns;
  const whole = Math.floor(way + SAME_SHARE);
  return { source, turns: whole % turns, rest: way - whole };
}

function isTwin(a: Place, b: Place, scale: number): boolean {
  return Math.abs(a.rest - b.rest) <= 2 * SAME_SHARE && isSameSource(a.source, b.source, 1, scale);
}

/**
 * Adds up what is hidden of filaments from what is hidden of the first of each class.
 *
 * @param leads for each class: [points] 1/m² hidden of its first filament, and the signature of that
 * @param masses [filaments] kg
 */
export function hiddenByTurns(
  classes: readonly TurnedFilaments[],
  leads: readonly Hidden[],
  masses: Float64Array,
): Hidden {
  const count = leads[0]?.sum.length ?? 0;
  const sum = new Float64Array(count);
  const signature = new Uint32Array(count);
  classes.forEach(({ members }, c) => {
    const lead = leads[c]!;
    const shaded = nodesIn(lead);
    for (const { filament, shift } of members) {
      const mass = masses[filament]!;
      const salt = Math.imul(filament + 1, 0x85ebca6b);
      for (const node of shaded) {
        const to = node + shift < count ? node + shift : node + shift - count;
        sum[to]! += mass * lead.sum[node]!;
        // each filament's own marks, or those of two would cancel
        signature[to]! ^= Math.imul(lead.signature[node]! ^ salt, 0x9e3779b1);
      }
    }
  });
  return { sum, signature };
}

/** Nodes from which something is hidden. */
function nodesIn({ signature }: Hidden): Int32Array {
  const nodes = new Int32Array(signature.length);
  let count = 0;
  for (let i = 0; i < signature.length; i++) if (signature[i] !== 0) nodes[count++] = i;
  return nodes.subarray(0, count);
}
