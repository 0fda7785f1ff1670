/** What is selected, between corner marks, and thinner what is pointed at in a list; mirror and tank with heavy rims. */
import { Box3, Group, Matrix4, Mesh, Quaternion, Vector3, type Object3D } from 'three';
import type { Filament, Plant } from '../../../engine/index.ts';
import { filamentsOf } from '../../state/edits/parts.ts';
import type { Part } from '../../state/selection.ts';
import { circleOnFace } from '../glassGeometry.ts';
import type { Picture } from '../picture.ts';
import { whenChanged } from '../whenChanged.ts';
import { signSize } from './coilsPart.ts';
import { cornerMarks } from './frameSegments.ts';
import { LIFT } from './glassPart.ts';
import type { ScenePart } from './scenePart.ts';
import { circleAt, cutHeight } from './shellPart.ts';
import { createThickLines } from './thickLines.ts';
import { HEAD_SHARE, pinTop } from './witnessPart.ts';

const WIDTH = 2.5;
const POINTED_WIDTH = 1.25;
/** Half sides of the frame around a filament's sign, in its lengths. */
const AROUND_COIL = new Box3(new Vector3(-0.62, -0.38, -0.38), new Vector3(0.62, 0.38, 0.38));
/** Half the width of the band around a ring, in lengths of a sign. */
const RING_BAND = 0.62;
const UNIT = new Box3(new Vector3(-1, -1, -1), new Vector3(1, 1, 1));
const ALONG = new Vector3(1, 0, 0);

/** A line through corners as separate segments. */
function asPairs(corners: ArrayLike<number>): number[] {
  const out: number[] = [];
  for (let o = 0; o + 5 < corners.length; o += 3) for (let k = 0; k < 6; k++) out.push(corners[o + k]!);
  return out;
}

function aroundFilament({ center, coilAxis, length }: Filament, plant: Plant): number[] {
  const size = Math.max(signSize(plant), length);
  const turn = new Quaternion().setFromUnitVectors(ALONG, new Vector3(...coilAxis));
  return cornerMarks(AROUND_COIL, new Matrix4().compose(new Vector3(...center), turn, new Vector3(size, size, size)));
}

function aroundWitness(plant: Plant, index: number): number[] {
  const witness = plant.witnesses[index];
  if (!witness) return [];
  const size = 2 * HEAD_SHARE * plant.tank.radius;
  return cornerMarks(UNIT, new Matrix4().makeScale(size, size, size).setPosition(...pinTop(witness, plant)));
}

function aroundObstacle(obstacles: Object3D, index: number): number[] {
  const mesh = obstacles.children.find(({ userData }) => userData['index'] === index);
  if (!(mesh instanceof Mesh)) return [];
  mesh.geometry.computeBoundingBox();
  return cornerMarks(mesh.geometry.boundingBox ?? UNIT, mesh.matrix);
}

/** Two circles that hold a whole ring between them: marks at each filament would hide what they mark. */
function aroundRing(plant: Plant, index: number): number[] {
  const first = plant.filaments.find(({ set }) => set === index);
  if (!first) return [];
  const [x, y, z] = first.center;
  const radius = Math.hypot(x - plant.shape.centerX, y);
  const half = RING_BAND * Math.max(signSize(plant), first.length);
  return [Math.max(0, radius - half), radius + half].flatMap((r) => asPairs(circleAt(plant.shape.centerX, r, z)));
}

/** Filaments that a part stands for: of a type, all that are made so. */
function filamentsOfPart({ plant, file }: Picture, part: Part): readonly Filament[] {
  if (part.kind !== 'type') return filamentsOf(plant, [part]);
  return plant.filaments.filter(({ set }) => file.filaments[set]?.type === part.name);
}

function marksOf(picture: Picture, part: Part, obstacles: Object3D): number[] {
  const { plant, file, coat } = picture;
  const { tank } = plant;
  const { shape } = coat.plant;
  switch (part.kind) {
    case 'mirror':
      return [Infinity, shape.holeRadius].flatMap((radius) =>
        asPairs(circleOnFace(shape, radius, 2 * LIFT * shape.rimRadius)),
      );
    case 'tank':
      return [tank.lowZ, cutHeight(plant)].flatMap((z) => asPairs(circleAt(tank.centerX, tank.radius, z)));
    case 'witness':
      return aroundWitness(plant, part.index);
    case 'obstacle':
      return aroundObstacle(obstacles, part.index);
    case 'set':
      return file.filaments[part.index]?.arrangement === 'ring'
        ? aroundRing(plant, part.index)
        : filamentsOfPart(picture, part).flatMap((filament) => aroundFilament(filament, plant));
    default:
      return filamentsOfPart(picture, part).flatMap((filament) => aroundFilament(filament, plant));
  }
}

/**
 * @param obstacles the group whose meshes know their index in the file; brought up to date before this part
 */
export function createSelectionPart(obstacles: Object3D): ScenePart {
  const [lines, thin] = [createThickLines(WIDTH), createThickLines(POINTED_WIDTH)];
  const object = new Group().add(lines.object, thin.object);
  let picture: Picture;
  const redraw = whenChanged((_plant: Plant, _shape: unknown, selected: readonly Part[]) =>
    lines.draw(selected.flatMap((part) => marksOf(picture, part, obstacles))),
  );
  const redrawPointed = whenChanged((_plant: Plant, _shape: unknown, pointed: Part | null) =>
    thin.draw(pointed ? marksOf(picture, pointed, obstacles) : []),
  );
  return {
    object,
    update: (now) => {
      picture = now;
      redrawPointed(now.plant, now.coat.plant.shape, now.pointed);
      thin.paint(now.colors['scene-mark']);
      redraw(now.plant, now.coat.plant.shape, now.selected);
      lines.paint(now.colors.accent);
    },
    dispose: () => {
      lines.dispose();
      thin.dispose();
    },
  };
}
