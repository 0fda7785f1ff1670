/** Moving the probe over a flat map by keys. */
import { isOnGlass, type MirrorShape } from '../../engine/geometry/mirrorShape.ts';

type Place = readonly [x: number, y: number];

const DIRECTIONS: Readonly<Record<string, Place>> = {
  ArrowRight: [1, 0],
  ArrowLeft: [-1, 0],
  ArrowUp: [0, 1],
  ArrowDown: [0, -1],
};

/** Length of a step, as a share of the rim's radius; with Shift it is ten times as long. */
const STEP = 0.01;
const BIG = 10;

/**
 * Where a key moves the probe: one step, or across the hole; null for another key, or at the rim.
 *
 * @param from m
 */
export function movedProbe(shape: MirrorShape, from: Place, key: string, isBig: boolean): Place | null {
  const direction = DIRECTIONS[key];
  if (!direction) return null;
  const step = STEP * shape.rimRadius * (isBig ? BIG : 1);
  for (let far = step; far < 2 * shape.rimRadius; far += step) {
    const place: Place = [from[0] + far * direction[0], from[1] + far * direction[1]];
    if (isOnGlass(shape, ...place)) return place;
  }
  return null;
}
