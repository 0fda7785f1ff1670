/**
 * Shadows found from the large to the small: what may hide something from a filament, then which patches of a run it
 * may hide, then which of their points from each sub-source.
 *
 * A filament's loops lie in a ball, and so do the points of a patch: see geometry/beam.ts for what holds for all lines
 * of sight between two balls. Only what is undecided for a sub-source and the smallest patch is tested point by point.
 */
import { isShielded, type FilamentSource, type Shield } from '../emission/filamentSource.ts';
import { CLEAR, CLEARANCE, HIDDEN, MIXED, type Beam, type Standing } from '../geometry/beam.ts';
import type { OrientedPoints } from '../geometry/orientedPoints.ts';
import { casterCount, hideBehindCaster, isOccludedByGlass, standingOfCaster } from '../geometry/scene.ts';
import { RUN } from './depositKernel.ts';
import { boundingBall, LEAF, NODES, type Patches } from './patches.ts';
import { canGlassHide, canGlassHideFrom, type Visibility } from './visibility.ts';

/** Hiders that are no obstacles; obstacles have their number in the order of casters. */
const SHIELD = -1;
const GLASS = -2;

/** What may hide some point of a set from some sub-source of a filament. */
export interface Hiders {
  readonly visibility: Visibility;
  readonly source: FilamentSource;
  readonly points: OrientedPoints;
  readonly patches: Patches;
  /** bounding ball of the sub-sources */
  readonly ball: Float64Array;
  readonly ids: readonly number[];
}

/** Finds what may hide some of the points from a filament; null if nothing does. */
export function findHiders(
  visibility: Visibility,
  source: FilamentSource,
  points: OrientedPoints,
  patches: Patches,
): Hiders | null {
  const ball = boundingBall(source.position);
  const beam = new Float64Array(8);
  beam.set(ball);
  beam.set(patches.whole, 4);
  const ids: number[] = [];
  if (source.shield && standingOfShield(source.shield, beam) !== CLEAR) ids.push(SHIELD);
  if (canGlassHideFrom(visibility, source)) ids.push(GLASS);
  for (let c = 0; c < casterCount(visibility.scene); c++) {
    if (standingOfCaster(visibility.scene, c, beam) !== CLEAR) ids.push(c);
  }
  return ids.length > 0 ? { visibility, source, points, patches, ball, ids } : null;
}

/** Patches of one run that a filament may not see whole, each with what hides it. Slots 0 … count are valid. */
export interface Doubts {
  count: number;
  readonly ids: Int32Array;
  /** slot of the patch among all nodes */
  readonly slots: Int32Array;
  readonly standings: Uint8Array;
  readonly beam: Beam;
}

/** Room for the doubts about one run in a scene. */
export function createDoubts({ scene }: Visibility): Doubts {
  const most = ((casterCount(scene) + 2) * NODES) / 2;
  return {
    count: 0,
    ids: new Int32Array(most),
    slots: new Int32Array(most),
    standings: new Uint8Array(most),
    beam: new Float64Array(8),
  };
}

/** Gathers the doubts of a filament about the run that starts at point `begin`; overwrites. Returns how many. */
export function gatherDoubtsInto(doubts: Doubts, hiders: Hiders, begin: number): number {
  doubts.count = 0;
  doubts.beam.set(hiders.ball);
  const root = NODES * (begin / RUN);
  for (const id of hiders.ids) gatherBelow(doubts, hiders, id, root, 1);
  return doubts.count;
}

/** Adds the doubts about one node of a run's tree and all below it. */
function gatherBelow(doubts: Doubts, hiders: Hiders, id: number, root: number, node: number): void {
  const slot = root + node;
  const { from, to } = hiders.patches;
  aimAt(doubts.beam, hiders.patches, slot);
  const standing = standingOf(hiders, id, doubts.beam);
  if (standing === CLEAR) return;
  if (standing === MIXED && to[slot]! - from[slot]! > LEAF) {
    gatherBelow(doubts, hiders, id, root, 2 * node);
    gatherBelow(doubts, hiders, id, root, 2 * node + 1);
    return;
  }
  doubts.ids[doubts.count] = id;
  doubts.slots[doubts.count] = slot;
  doubts.standings[doubts.count++] = standing;
}

function aimAt(beam: Beam, { balls }: Patches, slot: number): void {
  const o = 4 * slot;
  beam[4] = balls[o]!;
  beam[5] = balls[o + 1]!;
  beam[6] = balls[o + 2]!;
  beam[7] = balls[o + 3]!;
}

/** How a hider stands in a beam from some of the filament's sub-sources. */
function standingOf({ visibility, source }: Hiders, id: number, beam: Beam): Standing {
  if (id >= 0) return standingOfCaster(visibility.scene, id, beam);
  return id === SHIELD ? standingOfShield(source.shield!, beam) : MIXED;
}

/**
 * How a shield stands in a beam.
 *
 * A direction d is removed where f(d) = d·s − cosα |d| > 0, and f changes by at most (1 + |cosα|) times a change of d.
 */
function standingOfShield({ direction: [sx, sy, sz], cosHalfAngle }: Shield, beam: Beam): Standing {
  const dx = beam[4]! - beam[0]!;
  const dy = beam[5]! - beam[1]!;
  const dz = beam[6]! - beam[2]!;
  const f = dx * sx + dy * sy + dz * sz - cosHalfAngle * Math.sqrt(dx * dx + dy * dy + dz * dz);
  const change = (1 + Math.abs(cosHalfAngle)) * (beam[3]! + beam[7]! + CLEARANCE);
  return f > change ? HIDDEN : f < -change ? CLEAR : MIXED;
}

/**
 * Marks the points of a run that sub-source j does not see.
 *
 * @param hidden [points of the run] 1 for them, else 0; overwritten
 * @param doubts of this filament about the run
 * @returns how many are hidden
 */
export function hideInto(hidden: Uint8Array, doubts: Doubts, hiders: Hiders, begin: number, j: number): number {
  const { beam } = doubts;
  const { patches, source } = hiders;
  hidden.fill(0);
  for (let k = 0; k < 3; k++) beam[k] = source.position[3 * j + k]!;
  beam[3] = 0;
  let count = 0;
  for (let d = 0; d < doubts.count; d++) {
    const id = doubts.ids[d]!;
    const slot = doubts.slots[d]!;
    const from = patches.from[slot]!;
    const to = patches.to[slot]!;
    aimAt(beam, patches, slot);
    const standing = doubts.standings[d] === HIDDEN ? HIDDEN : standingOf(hiders, id, beam);
    if (standing === HIDDEN) count += hideAll(hidden, patches.members, begin, from, to);
    else if (standing === MIXED) count += hideEach(hidden, hiders, id, begin, from, to, j);
  }
  return count;
}

function hideAll(hidden: Uint8Array, members: Int32Array, begin: number, from: number, to: number): number {
  let count = 0;
  for (let k = from; k < to; k++) {
    const at = members[k]! - begin;
    count += 1 - hidden[at]!;
    hidden[at] = 1;
  }
  return count;
}

/** Tests members one by one against a hider. */
function hideEach(
  hidden: Uint8Array,
  { visibility, source, points, patches }: Hiders,
  id: number,
  begin: number,
  from: number,
  to: number,
  j: number,
): number {
  const sx = source.position[3 * j]!;
  const sy = source.position[3 * j + 1]!;
  const sz = source.position[3 * j + 2]!;
  const { position } = points;
  const { members } = patches;
  const { scene } = visibility;
  if (id >= 0) return hideBehindCaster(hidden, scene, id, sx, sy, sz, position, begin, members, from, to);
  if (id === GLASS && !canGlassHide(visibility, source, j)) return 0;
  let count = 0;
  for (let k = from; k < to; k++) {
    const at = members[k]! - begin;
    if (hidden[at] === 1) continue;
    const o = 3 * members[k]!;
    const dx = position[o]! - sx;
    const dy = position[o + 1]! - sy;
    const dz = position[o + 2]! - sz;
    const isHidden =
      id === GLASS
        ? isOccludedByGlass(scene.glass, sx, sy, sz, dx, dy, dz)
        : isShielded(source.shield!, dx, dy, dz, Math.sqrt(dx * dx + dy * dy + dz * dz));
    if (!isHidden) continue;
    hidden[at] = 1;
    count++;
  }
  return count;
}
