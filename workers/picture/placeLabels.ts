/** Finds room for labels, so that none covers another. */
import { lengthOf, type ContourLine } from './contourLines.ts';

export type Box = readonly [left: number, top: number, right: number, bottom: number];

/** Width of a character and height of a line, as shares of the type size: sans-serif figures and lower case. */
const CHARACTER = 0.56;
const LINE = 1.2;

function textWidth(text: string, size: number): number {
  return CHARACTER * size * text.length;
}

const overlaps = (a: Box, b: Box): boolean => a[0] < b[2] && b[0] < a[2] && a[1] < b[3] && b[1] < a[3];
const isFree = (box: Box, taken: readonly Box[], [left, top, right, bottom]: Box): boolean =>
  box[0] >= left &&
  box[1] >= top &&
  box[2] <= right &&
  box[3] <= bottom &&
  !taken.some((other) => overlaps(box, other));

export interface PlacedLabel {
  readonly text: string;
  /** middle of the text */
  readonly x: number;
  readonly y: number;
  /** degrees, clockwise */
  readonly turn: number;
}

/**
 * Places a label beside a point: right, left, below, above, or farther off; right of it if nowhere is free.
 *
 * @param taken boxes to stay clear of; the label's own is added
 */
export function placeBeside(x: number, y: number, text: string, size: number, taken: Box[], bounds: Box): PlacedLabel {
  const [w, h] = [textWidth(text, size), LINE * size];
  const aside = w / 2 + size;
  const candidates = [1, 2, 3].flatMap((far) => [
    [x + aside, y + (far - 1) * h],
    [x - aside, y + (far - 1) * h],
    [x, y + far * h],
    [x, y - far * h],
    [x + aside, y - far * h],
    [x - aside, y - far * h],
  ]) as [number, number][];
  const boxAt = ([cx, cy]: readonly [number, number]): Box => [cx - w / 2, cy - h / 2, cx + w / 2, cy + h / 2];
  const chosen = candidates.find((place) => isFree(boxAt(place), taken, bounds)) ?? candidates[0]!;
  taken.push(boxAt(chosen));
  return { text, x: chosen[0], y: chosen[1], turn: 0 };
}

/** A label on a line, and the stretch of the line that it covers, as lengths along it. */
export interface LineLabel extends PlacedLabel {
  readonly from: number;
  readonly to: number;
}

/** What is left of a line without the stretch under its label. */
export function withoutStretch(points: ContourLine['points'], from: number, to: number): ContourLine['points'][] {
  const before: (readonly [number, number])[] = [];
  const after: (readonly [number, number])[] = [pointAlong(points, to)];
  let along = 0;
  points.forEach((point, i) => {
    if (i > 0) along += Math.hypot(point[0] - points[i - 1]![0], point[1] - points[i - 1]![1]);
    if (along < from) before.push(point);
    if (along > to) after.push(point);
  });
  return [[...before, pointAlong(points, from)], after];
}

/** Point at a length along a line. */
function pointAlong(points: ContourLine['points'], along: number): readonly [number, number] {
  let left = along;
  for (let i = 1; i < points.length; i++) {
    const [p, q] = [points[i - 1]!, points[i]!];
    const step = Math.hypot(q[0] - p[0], q[1] - p[1]);
    if (step > 0 && left <= step) return [p[0] + (left / step) * (q[0] - p[0]), p[1] + (left / step) * (q[1] - p[1])];
    left -= step;
  }
  return points.at(-1)!;
}

/** The same direction so that text along it is read from below, or upwards where it is steep. */
function upright(degrees: number): number {
  if (degrees > STEEP) return degrees - 180;
  return degrees <= STEEP - 180 ? degrees + 180 : degrees;
}

/** Text that falls more steeply than this is turned to climb, degrees. */
const STEEP = 75;
/** Places tried along a line, as shares of its length; the numbers spread them. */
const TRIES = Array.from({ length: 14 }, (_, i) => (0.31 + i * 0.381966) % 1);
/** A line that bends more than this under its label, as share of the label's width, is no place for it. */
const STRAIGHT = 0.93;

/**
 * Places a label on a line, turned along it; null if there is no free stretch.
 *
 * @param taken boxes to stay clear of; the label's own is added
 */
export function placeOnLine(
  points: ContourLine['points'],
  text: string,
  size: number,
  taken: Box[],
  bounds: Box,
): LineLabel | null {
  const [w, h] = [textWidth(text, size) + 0.6 * size, LINE * size];
  const length = lengthOf(points);
  if (length < 2 * w) return null;
  for (const share of TRIES) {
    const middle = w / 2 + share * (length - w);
    const [p, q] = [pointAlong(points, middle - w / 2), pointAlong(points, middle + w / 2)];
    const [dx, dy] = [q[0] - p[0], q[1] - p[1]];
    if (Math.hypot(dx, dy) < STRAIGHT * w) continue;
    const [x, y] = pointAlong(points, middle);
    const turn = Math.atan2(dy, dx);
    const [cos, sin] = [Math.abs(Math.cos(turn)), Math.abs(Math.sin(turn))];
    const [halfX, halfY] = [(w * cos + h * sin) / 2, (w * sin + h * cos) / 2];
    const box: Box = [x - halfX, y - halfY, x + halfX, y + halfY];
    if (!isFree(box, taken, bounds)) continue;
    taken.push(box);
    return { text, x, y, turn: upright((turn * 180) / Math.PI), from: middle - w / 2, to: middle + w / 2 };
  }
  return null;
}
