/** Solids in random places and of random sizes, for laws that hold for all of them. */
import type { ObstacleDesign } from '../../engine/design/designSchema.ts';
import type { Vector } from '../../engine/geometry/solids.ts';

export type SolidDesign = Exclude<ObstacleDesign, { shape: 'mesh' }>;

/**
 * A solid of a shape within about a metre of the origin.
 *
 * @param even gives numbers from −1 to 1, evenly
 */
export function randomSolid(shape: SolidDesign['shape'], even: () => number): SolidDesign {
  const name = shape;
  const place = (): [number, number, number] => [even(), even(), 0.6 * even()];
  const size = (): number => 0.02 + 0.6 * even() ** 2;
  switch (shape) {
    case 'box':
      return { shape, name, center: place(), size: [size(), size(), size()], rotation: [3 * even(), even(), even()] };
    case 'sphere':
      return { shape, name, center: place(), diameter: size() };
    case 'cylinder':
    case 'tube':
      return { shape, name, from: place(), to: place(), diameter: size() };
    case 'cone frustum':
      // now and then a cone with a tip
      return {
        shape,
        name,
        from: place(),
        to: place(),
        fromDiameter: size(),
        toDiameter: Math.max(0, even()) * size(),
      };
    case 'disc':
      return { shape, name, center: place(), normal: unit(even), diameter: 2 * size() };
    case 'annulus': {
      const innerDiameter = size();
      return { shape, name, center: place(), normal: unit(even), innerDiameter, outerDiameter: innerDiameter + size() };
    }
  }
}

function unit(even: () => number): [number, number, number] {
  const d: Vector = [even(), even(), even() || 1];
  const length = Math.hypot(...d);
  return [d[0] / length, d[1] / length, d[2] / length];
}
