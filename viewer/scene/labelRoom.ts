/** Finds room for labels, so that none covers another. */
export type Box = readonly [left: number, top: number, right: number, bottom: number];

const overlaps = (a: Box, b: Box): boolean => a[0] < b[2] && b[0] < a[2] && a[1] < b[3] && b[1] < a[3];

export const isFree = (box: Box, taken: readonly Box[]): boolean => !taken.some((other) => overlaps(box, other));

export const shifted = ([left, top, right, bottom]: Box, dx: number, dy: number): Box => [
  left + dx,
  top + dy,
  right + dx,
  bottom + dy,
];

/**
 * The smallest move after which a box covers none of those taken and stays in the frame: down, up, then to
 * the left and right of where it was. Null if there is none near by.
 */
export function wayOut(box: Box, taken: readonly Box[], frame: Box, reach: number): readonly [number, number] | null {
  const fits = (dx: number, dy: number): boolean => {
    const moved = shifted(box, dx, dy);
    const isInside = moved[0] >= frame[0] && moved[1] >= frame[1] && moved[2] <= frame[2] && moved[3] <= frame[3];
    return isInside && isFree(moved, taken);
  };
  const [width, height] = [box[2] - box[0], box[3] - box[1]];
  const stepDown = height / 2;
  for (let ring = 0; ring * stepDown <= reach; ring++) {
    for (const dx of [0, -width / 2, -width - 20, width / 2]) {
      for (const dy of ring === 0 ? [0] : [ring * stepDown, -ring * stepDown]) if (fits(dx, dy)) return [dx, dy];
    }
  }
  return null;
}
