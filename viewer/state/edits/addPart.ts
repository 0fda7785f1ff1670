/** New parts with ready values that are sound in the present plant. */
import { openPlantFile, type DesignFile } from '../../../engine/index.ts';
import { faceHeights } from '../../../engine/geometry/mirrorShape.ts';
import { typeHasCharge } from './charges.ts';
import { lengthText, pointText } from './lengths.ts';
import { meshInPlaceOf } from './obstacleShapes.ts';
import { withValue } from './path.ts';
import { freeName, type ObstacleFile, type Present, type SetFile, type TypeFile, type WitnessFile } from './parts.ts';
import type { Part } from '../selection.ts';

export type AddedKind = 'type' | 'set' | 'obstacle' | 'witness';

export interface Added {
  readonly file: DesignFile;
  readonly part: Part;
}

/** The plant with one part more. */
export function addPart(present: Present, kind: AddedKind): Added {
  switch (kind) {
    case 'type':
      return addType(present.file);
    case 'set':
      return addSet(present);
    case 'obstacle':
      return addObstacle(present);
    case 'witness':
      return addWitness(present);
  }
}

/** The first that the engine accepts; if it accepts none, the first, for it to say why. */
export function firstSound<Item>(
  items: readonly Item[],
  fileOf: (item: Item) => unknown,
  { files }: Pick<Present, 'files'>,
) {
  return items.find((item) => openPlantFile(fileOf(item), files).ok) ?? items[0];
}

const COIL: TypeFile = {
  loops: 4,
  length: '60 mm',
  wire: { diameter: '0.5 mm', strands: 3 },
  clipMass: '70 mg',
  clipsPerLoop: 1,
  emission: { law: 'open coil' },
};

function addType(file: DesignFile): Added & { readonly name: string } {
  const name = freeName('coil', Object.keys(file.filamentTypes));
  return {
    name,
    file: { ...file, filamentTypes: { ...file.filamentTypes, [name]: COIL } },
    part: { kind: 'type', name },
  };
}

const NEW_CHARGE = '250 mg';
const NEW_COUNT = 12;
/** Shares of the way from the face to the end wall, and from the rim to the tank wall; the middle first. */
const SHARES = [0.5, 0.4, 0.6, 0.3, 0.7, 0.2, 0.8, 0.1, 0.9];

/** Lengths of new parts, rounded to what a tape measure reads, m. */
const tape = (value: number): string => lengthText(Math.round(value * 1e3) / 1e3, 'm');

function addSet(present: Present): Added {
  const [type = ''] = Object.keys(present.file.filamentTypes);
  const base = type === '' ? addType(present.file) : { file: present.file, name: type };
  const index = base.file.filaments.length;
  const { shape, tank } = present.plant;
  const { high } = faceHeights(shape);
  const ring = (sideways: number, upwards: number): SetFile => ({
    arrangement: 'ring',
    name: freeName(
      'ring',
      base.file.filaments.map(({ name }) => name),
    ),
    type: base.name,
    count: NEW_COUNT,
    diameter: tape(2 * (shape.rimRadius + sideways * (tank.radius - shape.rimRadius))),
    height: tape(high + upwards * (tank.highZ - high)),
    axis: 'tangential',
    ...(!typeHasCharge(base.file.filamentTypes[base.name]) && { charge: NEW_CHARGE }),
  });
  const fileWith = (set: SetFile): DesignFile => ({ ...base.file, filaments: [...base.file.filaments, set] });
  const rings = SHARES.flatMap((sideways) => SHARES.map((upwards) => ring(sideways, upwards)));
  const inside = SHARES.map((upwards) => ring(-0.5, upwards));
  const set = firstSound([...rings, ...inside], fileWith, present) ?? ring(0.5, 0.5);
  return { file: fileWith(set), part: { kind: 'set', index } };
}

/** Width of a new obstacle in diameters of the glass. */
const NEW_WIDTH = 0.05;

function addObstacle(present: Present): Added {
  const { file, plant } = present;
  const old = file.obstacles ?? [];
  const { high } = faceHeights(plant.shape);
  const width = 2 * plant.shape.rimRadius * NEW_WIDTH;
  const name = freeName(
    'cylinder',
    old.map((obstacle) => obstacle.name),
  );
  const cylinder = (outwards: number, upwards: number): ObstacleFile => {
    const [x, z] = [plant.shape.centerX + outwards * plant.shape.rimRadius, high + upwards * (plant.tank.highZ - high)];
    const at = (height: number) => [tape(x), '0 m', tape(height)] as [string, string, string];
    return { shape: 'cylinder', name, from: at(z - width), to: at(z + width), diameter: tape(width) };
  };
  const fileWith = (obstacle: ObstacleFile): DesignFile => ({ ...file, obstacles: [...old, obstacle] });
  const cylinders = [0, 0.1, 0.25, 0.7].flatMap((outwards) => SHARES.map((upwards) => cylinder(outwards, upwards)));
  const obstacle = firstSound(cylinders, fileWith, present) ?? cylinder(0, 0.5);
  return { file: fileWith(obstacle), part: { kind: 'obstacle', index: old.length } };
}

/** Distance of a new witness from the rim in radii of the glass. */
const BESIDE_RIM = 0.03;

function addWitness(present: Present): Added {
  const { file, plant } = present;
  const old = file.witnesses ?? [];
  const name = freeName(
    `W${old.length + 1}`,
    old.map((witness) => witness.name),
  );
  const { rimRadius } = plant.shape;
  const taken = new Set(old.map(({ angle }) => angle));
  const angle = Array.from({ length: 12 }, (_, i) => `${30 * i} deg`).find((text) => !taken.has(text)) ?? '15 deg';
  const beside = Math.min(rimRadius * (1 + BESIDE_RIM), (rimRadius + plant.tank.radius) / 2);
  const witness = (radius: number): WitnessFile => ({ name, radius: tape(radius), angle });
  const fileWith = (one: WitnessFile): DesignFile => ({ ...file, witnesses: [...old, one] });
  // the mirror's continuation may end just beyond its rim
  const radii = [beside, (beside + rimRadius) / 2, rimRadius * (1 - BESIDE_RIM), rimRadius / 2];
  const chosen = firstSound(radii.map(witness), fileWith, present) ?? witness(beside);
  return { file: fileWith(chosen), part: { kind: 'witness', index: old.length } };
}

/** The plant with a mesh as one obstacle more: the STL file goes into the design as base64 text. */
export function addMesh({ file, plant }: Present, name: string, data: string, unit: MeshUnit): Added {
  const old = file.obstacles ?? [];
  const mesh: ObstacleFile = {
    shape: 'mesh',
    name: freeName(
      name,
      old.map((obstacle) => obstacle.name),
    ),
    data,
    unit,
    position: pointText([plant.shape.centerX, 0, 0], 'm'),
  };
  return { file: { ...file, obstacles: [...old, mesh] }, part: { kind: 'obstacle', index: old.length } };
}

/** The plant with an obstacle that takes its shape from an STL file; a mesh stays where it is. */
export function withMesh(file: DesignFile, index: number, data: string, unit: MeshUnit): DesignFile {
  const old = file.obstacles?.[index];
  if (!old) return file;
  const { file: _named, ...placed } = old.shape === 'mesh' ? old : meshInPlaceOf(old);
  return withValue(file, ['obstacles', index], { ...placed, data, unit });
}

export type MeshUnit = NonNullable<Extract<ObstacleFile, { shape: 'mesh' }>['unit']>;
