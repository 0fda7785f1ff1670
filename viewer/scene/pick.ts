/** Which part of the plant lies under the pointer. */
import { Raycaster, Vector2, type Object3D, type PerspectiveCamera } from 'three';
import type { Plant } from '../../engine/index.ts';
import { firstHitOfBody, firstHitOfFace, glassOf } from '../../engine/geometry/glass.ts';
import { backHeight } from '../../engine/geometry/mirrorShape.ts';
import type { Part } from '../state/selection.ts';
import { signSize } from './parts/coilsPart.ts';
import { cutHeight } from './parts/shellPart.ts';
import { pinTop } from './parts/witnessPart.ts';
import { toScreen } from './sceneAccess.ts';

export interface Sight {
  readonly camera: PerspectiveCamera;
  readonly obstacles: Object3D;
  /** of the picture, px */
  readonly width: number;
  readonly height: number;
}

/** How far from a sign the pointer may be, px: half a comfortable target. */
const REACH = 12;

type Place = readonly [number, number, number];
type Screen = readonly [number, number];

/** Distance of a point on screen from a segment, px. */
function distanceTo([x, y]: Screen, [ax, ay]: Screen, [bx, by]: Screen): number {
  const [dx, dy] = [bx - ax, by - ay];
  const length2 = dx * dx + dy * dy;
  const t = length2 > 0 ? Math.min(1, Math.max(0, ((x - ax) * dx + (y - ay) * dy) / length2)) : 0;
  return Math.hypot(x - ax - t * dx, y - ay - t * dy);
}

interface Candidate {
  readonly part: Part;
  readonly ends: readonly [Place, Place];
}

function candidatesOf(plant: Plant): Candidate[] {
  const filaments = plant.filaments.map(({ set, number, center, coilAxis, length }): Candidate => {
    const half = Math.max(signSize(plant), length) / 2;
    const end = (sign: number): Place => [0, 1, 2].map((k) => center[k as 0] + sign * half * coilAxis[k as 0]) as never;
    return { part: { kind: 'filament', set, number }, ends: [end(-1), end(1)] };
  });
  const witnesses = plant.witnesses.map((witness, index): Candidate => {
    return { part: { kind: 'witness', index }, ends: [witness.position, pinTop(witness, plant)] };
  });
  return [...filaments, ...witnesses];
}

function depthOf({ camera }: Sight, place: Place): number {
  return Math.hypot(...place.map((v, k) => v - camera.position.getComponent(k)));
}

/** The filament or witness nearest to the pointer, with its distance from the camera, m. */
function nearestSign(sight: Sight, plant: Plant, at: Screen) {
  let best: { readonly part: Part; readonly depth: number } | null = null;
  let least = REACH;
  for (const { part, ends } of candidatesOf(plant)) {
    const [a, b] = ends.map((end) => toScreen(sight.camera, sight, end));
    if (!a || !b) continue;
    const distance = distanceTo(at, a, b);
    if (distance >= least) continue;
    least = distance;
    best = { part, depth: depthOf(sight, ends[1]) };
  }
  return best;
}

function rayAt({ camera, width, height }: Sight, [x, y]: Screen): Raycaster {
  const raycaster = new Raycaster();
  raycaster.setFromCamera(new Vector2((2 * x) / width - 1, 1 - (2 * y) / height), camera);
  return raycaster;
}

/** Distance along the ray at which it meets the glass, if the picture shows it from there; else Infinity. */
function distanceOfGlass(raycaster: Raycaster, { camera }: Sight, { shape }: Plant): number {
  if (camera.position.z < backHeight(shape)) return Infinity;
  const { origin: o, direction: d } = raycaster.ray;
  const glass = glassOf(shape);
  return Math.min(
    firstHitOfFace(glass, o.x, o.y, o.z, d.x, d.y, d.z, 0),
    firstHitOfBody(glass, o.x, o.y, o.z, d.x, d.y, d.z, 0),
  );
}

/** Whether the ray passes through the tank as it is drawn, cut open above. */
function crossesTank(raycaster: Raycaster, plant: Plant): boolean {
  const { origin: o, direction: d } = raycaster.ray;
  const { radius, centerX, lowZ } = plant.tank;
  const highZ = cutHeight(plant);
  const [px, a] = [o.x - centerX, d.x * d.x + d.y * d.y];
  // if it crosses at all, then where it is nearest to the axis, or at one of the ends
  const nearest = a > 0 ? -(px * d.x + o.y * d.y) / a : 0;
  const ends = d.z === 0 ? [] : [lowZ, highZ].map((z) => (z - o.z) / d.z);
  const slack = 1e-9 * (highZ - lowZ);
  return [nearest, ...ends].some((t) => {
    const z = o.z + t * d.z;
    return t > 0 && z > lowZ - slack && z < highZ + slack && Math.hypot(px + t * d.x, o.y + t * d.y) < radius;
  });
}

/** The part of the plant at a place on screen, px from the picture's upper left; null if there is none. */
export function pickPart(sight: Sight, plant: Plant, at: Screen): Part | null {
  sight.camera.updateMatrixWorld();
  const raycaster = rayAt(sight, at);
  const [obstacle] = raycaster.intersectObjects(sight.obstacles.children, false);
  const sign = nearestSign(sight, plant, at);
  if (sign && (!obstacle || sign.depth < obstacle.distance)) return sign.part;
  const glass = distanceOfGlass(raycaster, sight, plant);
  const index: unknown = obstacle?.object.userData['index'];
  if (typeof index === 'number' && (obstacle?.distance ?? Infinity) < glass) return { kind: 'obstacle', index };
  if (glass < Infinity) return { kind: 'mirror' };
  return crossesTank(raycaster, plant) ? { kind: 'tank' } : null;
}
