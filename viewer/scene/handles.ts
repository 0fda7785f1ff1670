/** The handles of a selected part: what each one changes, along which line, and by how much. */
import type { DesignFile, NamedFiles, Plant } from '../../engine/index.ts';
import { movePart, setRing } from '../state/edits/movePart.ts';
import { nameOfPart } from '../state/edits/parts.ts';
import type { Part } from '../state/selection.ts';
import { pinTop } from './parts/witnessPart.ts';
import type { HandleKind } from './snap.ts';

type Vector = readonly [number, number, number];
/** A design as the handles need it. */
export interface Design {
  readonly file: DesignFile;
  readonly files: NamedFiles;
  readonly plant: Plant;
}

export interface Handle {
  readonly key: 'x' | 'y' | 'z' | 'diameter' | 'height' | 'radius' | 'angle';
  /** what it changes, such as "height of outer": also the name of the step that can be undone */
  readonly label: string;
  readonly kind: HandleKind;
  /** where it begins, m */
  readonly origin: Vector;
  /** unit vector along which it is dragged */
  readonly direction: Vector;
  /** m or rad */
  readonly value: number;
  /** change of the value for each metre along the line */
  readonly perMetre: number;
  /** the design of the beginning with another value */
  readonly apply: (value: number) => DesignFile;
}

const AXES = [
  ['x', [1, 0, 0]],
  ['y', [0, 1, 0]],
  ['z', [0, 0, 1]],
] as const;

/**
 * Handles along x, y and z for one part, or for several that move together.
 *
 * @param name of what is moved, such as "outer" or "3 parts"
 */
export function axisHandles({ file, files }: Design, parts: readonly Part[], name: string, origin: Vector): Handle[] {
  return AXES.map(([key, direction], k) => ({
    key,
    label: `${key} of ${name}`,
    kind: 'length',
    origin,
    direction,
    value: origin[k as 0],
    perMetre: 1,
    apply: (value) => {
      const by = value - origin[k as 0];
      const delta: [number, number, number] = [by * direction[0], by * direction[1], by * direction[2]];
      return parts.reduce((moved, part) => movePart(moved, part, delta, files), file);
    },
  }));
}

/**
 * Height and diameter of a ring, on its point nearest to a clock angle.
 *
 * @param clockAngle rad
 */
function ringHandles({ file, plant }: Design, index: number, clockAngle: number): Handle[] {
  const own = plant.filaments.filter(({ set }) => set === index);
  const [first] = own;
  const name = plant.setNames[index] ?? '';
  if (!first) return [];
  const { centerX } = plant.shape;
  const radius = Math.hypot(first.center[0] - centerX, first.center[1]);
  const height = first.center[2];
  const out: Vector = [Math.cos(clockAngle), Math.sin(clockAngle), 0];
  const origin: Vector = [centerX + radius * out[0], radius * out[1], height];
  return [
    {
      key: 'diameter',
      label: `diameter of ${name}`,
      kind: 'length',
      origin,
      direction: out,
      value: 2 * radius,
      perMetre: 2,
      apply: (diameter) => setRing(file, index, { diameter: Math.max(0, diameter) }),
    },
    {
      key: 'height',
      label: `height of ${name}`,
      kind: 'length',
      origin,
      direction: [0, 0, 1],
      value: height,
      perMetre: 1,
      apply: (value) => setRing(file, index, { height: value }),
    },
  ];
}

/** A witness on the mirror slides along its radius and around the clock. */
function surfaceHandles({ file, files, plant }: Design, index: number, name: string): Handle[] {
  const witness = plant.witnesses[index];
  if (!witness) return [];
  const part: Part = { kind: 'witness', index };
  const [dx, dy] = [witness.position[0] - plant.shape.centerX, witness.position[1]];
  const radius = Math.hypot(dx, dy);
  const angle = Math.atan2(dy, dx);
  const out: Vector = radius > 0 ? [dx / radius, dy / radius, 0] : [1, 0, 0];
  const top = pinTop(witness, plant);
  const to = (r: number, a: number): DesignFile =>
    movePart(file, part, [r * Math.cos(a) - dx, r * Math.sin(a) - dy, 0], files);
  const along: Handle = {
    key: 'radius',
    label: `radius of ${name}`,
    kind: 'length',
    origin: top,
    direction: out,
    value: radius,
    perMetre: 1,
    apply: (value) => to(Math.max(0, value), angle),
  };
  if (radius === 0) return [along];
  return [
    along,
    {
      key: 'angle',
      label: `angle of ${name}`,
      kind: 'angle',
      origin: top,
      direction: [-out[1], out[0], 0],
      value: angle < 0 ? angle + 2 * Math.PI : angle,
      perMetre: 1 / radius,
      apply: (value) => to(radius, value),
    },
  ];
}

/** The middle of several places. */
export function middleOf(places: readonly Vector[]): Vector {
  const sum = [0, 1, 2].map((k) => places.reduce((total, place) => total + place[k as 0], 0) / places.length);
  return sum as unknown as Vector;
}

/** The place from which an obstacle is measured: its middle, or where the origin of its mesh goes. */
function placeOfObstacle(plant: Plant, iPlant: number): Vector {
  const { solids, meshes } = plant;
  if (iPlant < solids.count) {
    const o = (solids.records.length / solids.count) * iPlant + 17; // bounding sphere
    return [...solids.records.subarray(o, o + 3)] as unknown as Vector;
  }
  const { position } = meshes[iPlant - solids.count] ?? { position: new Float32Array(3) };
  const corners = Array.from({ length: position.length / 3 }, (_, i) => [...position.subarray(3 * i, 3 * i + 3)]);
  return middleOf(corners as unknown as Vector[]);
}

/**
 * The place of a part, m; null for what has none of its own.
 *
 * @param order see obstacleOrder
 */
export function placeOf({ plant }: Design, part: Part, order: readonly number[]): Vector | null {
  switch (part.kind) {
    case 'set': {
      const centers = plant.filaments.flatMap(({ set, center }) => (set === part.index ? [center] : []));
      return centers.length > 0 ? middleOf(centers) : null;
    }
    case 'filament':
      return plant.filaments.find(({ set, number }) => set === part.set && number === part.number)?.center ?? null;
    case 'obstacle': {
      const iPlant = order.indexOf(part.index);
      return iPlant < 0 ? null : placeOfObstacle(plant, iPlant);
    }
    case 'witness':
      return plant.witnesses[part.index]?.position ?? null;
    default:
      return null;
  }
}

/**
 * The handles of a part; none for what has no place of its own.
 *
 * @param order see obstacleOrder
 * @param clockAngle where a ring shows its handles, rad
 */
export function handlesOf(design: Design, part: Part, order: readonly number[], clockAngle: number): Handle[] {
  const { file } = design;
  const name = nameOfPart(design, part);
  if (part.kind === 'set' && file.filaments[part.index]?.arrangement === 'ring')
    return ringHandles(design, part.index, clockAngle);
  if (part.kind === 'witness' && file.witnesses?.[part.index]?.position === undefined)
    return surfaceHandles(design, part.index, name);
  const place = placeOf(design, part, order);
  return place ? axisHandles(design, [part], name, place) : [];
}
