/** Lines from the probe to the filaments that feed it: thicker for more, dashed where something is in the way. */
import { CylinderGeometry, Group, Matrix4, Quaternion, Vector3 } from 'three';
import type { Plant, ProbeReading } from '../../../engine/index.ts';
import { probePathsOf, type ProbePath } from '../probePaths.ts';
import { whenChanged } from '../whenChanged.ts';
import type { ScenePart } from './scenePart.ts';
import { createSigns, type Sign } from './signs.ts';

const UP = new Vector3(0, 1, 0);
/** Radius of the thickest and thinnest line as shares of the tank's radius. */
const THICKEST = 0.007;
const THINNEST = 0.0012;
const DASHES = 10;

/** One piece of a line, from share `from` to share `to` of the way. */
function piece(start: Vector3, end: Vector3, from: number, to: number, radius: number, color: string): Sign {
  const way = end.clone().sub(start);
  const turn = new Quaternion().setFromUnitVectors(UP, way.clone().normalize());
  const middle = start.clone().addScaledVector(way, (from + to) / 2);
  const size = new Vector3(radius, way.length() * (to - from), radius);
  return { color, matrix: new Matrix4().compose(middle, turn, size) };
}

function piecesOf(path: ProbePath, most: number, plant: Plant, start: Vector3, color: string): Sign[] {
  const filament = plant.filaments[path.iFilament];
  if (!filament) return [];
  const end = new Vector3(...filament.center);
  const radius = plant.tank.radius * Math.max(THINNEST, (THICKEST * path.open) / most);
  if (!path.isBlocked) return [piece(start, end, 0, 1, radius, color)];
  return Array.from({ length: DASHES }, (_, i) =>
    piece(start, end, i / DASHES, (i + 0.5) / DASHES, Math.max(THINNEST * plant.tank.radius, radius / 2), color),
  );
}

export function createPathsPart(): ScenePart {
  const object = new Group();
  const signs = createSigns(
    new CylinderGeometry(1, 1, 1, 6, 1, true),
    (old, next) => void object.remove(old).add(next),
  );
  object.add(signs.mesh());
  const redraw = whenChanged((plant: Plant, reading: ProbeReading | null, isShown: boolean, color: string) => {
    object.visible = isShown && reading !== null;
    if (!isShown || !reading) return;
    const paths = probePathsOf(plant, reading);
    const start = new Vector3(...reading.position);
    signs.draw(paths.flatMap((path) => piecesOf(path, paths[0]?.open ?? 1, plant, start, color)));
  });
  return {
    object,
    update: ({ coat, reading, options, colors }) =>
      redraw(coat.plant, reading, options.showsPaths, colors['scene-mark']),
    dispose: signs.dispose,
  };
}
