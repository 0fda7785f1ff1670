/** Obstacles turned from one shape into another of about the same size and place. */
import { lengthText, metresOf, pointText, type PointText, type Vector } from './lengths.ts';
import type { ObstacleFile } from './parts.ts';

export type SolidShape = Exclude<ObstacleFile['shape'], 'mesh'>;

/** Where an obstacle is and how large, whatever its shape. */
interface Extent {
  readonly center: Vector;
  readonly axis: Vector;
  readonly length: number;
  readonly diameter: number;
}

const vectorOf = (point: PointText): Vector => [metresOf(point[0]), metresOf(point[1]), metresOf(point[2])];

/** Length of a flat thing made solid, in diameters. */
const FLAT = 0.1;

function extentBetween(from: PointText, to: PointText, diameter: number): Extent {
  const [a, b] = [vectorOf(from), vectorOf(to)];
  const along: Vector = [b[0] - a[0], b[1] - a[1], b[2] - a[2]];
  const length = Math.hypot(...along);
  return {
    center: [(a[0] + b[0]) / 2, (a[1] + b[1]) / 2, (a[2] + b[2]) / 2],
    axis: [along[0] / length, along[1] / length, along[2] / length],
    length,
    diameter,
  };
}

function extentAcross(center: PointText, normal: Vector, diameter: number): Extent {
  const size = Math.hypot(...normal);
  const axis: Vector = [normal[0] / size, normal[1] / size, normal[2] / size];
  return { center: vectorOf(center), axis, length: FLAT * diameter, diameter };
}

function extentOf(obstacle: ObstacleFile): Extent {
  switch (obstacle.shape) {
    case 'box': {
      const [x, y, z] = vectorOf(obstacle.size);
      return { center: vectorOf(obstacle.center), axis: [0, 0, 1], length: z, diameter: Math.max(x, y) };
    }
    case 'cylinder':
    case 'tube':
      return extentBetween(obstacle.from, obstacle.to, metresOf(obstacle.diameter));
    case 'cone frustum': {
      const diameter = Math.max(metresOf(obstacle.fromDiameter), metresOf(obstacle.toDiameter));
      return extentBetween(obstacle.from, obstacle.to, diameter);
    }
    case 'disc':
      return extentAcross(obstacle.center, obstacle.normal, metresOf(obstacle.diameter));
    case 'annulus':
      return extentAcross(obstacle.center, obstacle.normal, metresOf(obstacle.outerDiameter));
    case 'sphere': {
      const diameter = metresOf(obstacle.diameter);
      return { center: vectorOf(obstacle.center), axis: [0, 0, 1], length: diameter, diameter };
    }
    case 'mesh':
      return {
        center: vectorOf(obstacle.position ?? ['0 m', '0 m', '0 m']),
        axis: [0, 0, 1],
        length: 0.1,
        diameter: 0.1,
      };
  }
}

/** Ten micrometres: finer than anything in a tank is set up, m. */
const round = (value: number): number => Math.round(value * 1e5) / 1e5;
const text = (value: number): string => lengthText(round(value), 'm');
const at = (x: number, y: number, z: number): PointText => pointText([round(x), round(y), round(z)], 'm');

/** A mesh, still without triangles, whose origin is in the middle of an obstacle. */
export function meshInPlaceOf(old: ObstacleFile): Extract<ObstacleFile, { shape: 'mesh' }> {
  return { shape: 'mesh', name: old.name, position: at(...extentOf(old).center) };
}

/** The same obstacle in another shape. */
export function obstacleOfShape(old: ObstacleFile, shape: SolidShape): ObstacleFile {
  const { center, axis, length, diameter } = extentOf(old);
  const { name } = old;
  const [x, y, z] = center;
  const half = length / 2;
  const ends = {
    from: at(x - half * axis[0], y - half * axis[1], z - half * axis[2]),
    to: at(x + half * axis[0], y + half * axis[1], z + half * axis[2]),
  };
  const middle = { name, center: at(x, y, z) };
  const normal: [number, number, number] = [axis[0], axis[1], axis[2]];
  switch (shape) {
    case 'box':
      return { shape, ...middle, size: [text(diameter), text(diameter), text(length)] };
    case 'cylinder':
    case 'tube':
      return { shape, name, ...ends, diameter: text(diameter) };
    case 'cone frustum':
      return { shape, name, ...ends, fromDiameter: text(diameter), toDiameter: text(diameter / 2) };
    case 'disc':
      return { shape, ...middle, normal, diameter: text(diameter) };
    case 'annulus':
      return { shape, ...middle, normal, innerDiameter: text(diameter / 2), outerDiameter: text(diameter) };
    case 'sphere':
      return { shape, ...middle, diameter: text(diameter) };
  }
}
