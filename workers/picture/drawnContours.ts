/** The contours of a map: which are drawn, and how they are labelled. */
import { contourLines, lengthOf, type ContourLine } from './contourLines.ts';
import type { Frame } from './frame.ts';
import { shownValue, type KeyLevel, type MapSubject } from './mapSubject.ts';
import { inkOn } from './paint.ts';
import { placeOnLine, withoutStretch, type Box, type LineLabel } from './placeLabels.ts';
import type { Raster } from './rasterMap.ts';
import { decimalsOf, extentOf, shareOn } from './valueScale.ts';

export interface DrawnLine {
  readonly path: string;
  readonly ink: string;
  readonly isKey: boolean;
  readonly isDashed: boolean;
}

const n = (value: number): string => String(Number(value.toFixed(1)));

type Points = ContourLine['points'];

const pathOf = (points: Points): string => `M${points.map(([x, y]) => `${n(x)} ${n(y)}`).join('L')}`;

/** Levels that are labelled at most. */
const MOST_LABELS = 16;

/** A round level this near a key level would be drawn over it, share of the scale. */
const NEAR = 0.01;

/** Round levels inside the range of the values, all but those that a key level is drawn at. */
function roundLevels({ scale, keyLevels }: MapSubject, { values }: Raster): number[] {
  const [low, high] = extentOf(values);
  const span = scale.high - scale.low;
  return scale.ticks.filter(
    (tick) =>
      tick > low &&
      tick < high &&
      high - low > 1e-3 * span &&
      keyLevels.every(({ value }) => Math.abs(value - tick) > NEAR * span),
  );
}

/** A contour in picture coordinates. */
export interface Line {
  readonly points: Points;
  readonly level: number;
  readonly key: KeyLevel | undefined;
  readonly text: string;
}

/** A fragile level whose lines are longer than this many sides of the map traces noise. */
const LONGEST = 12;
/** So does one beside which the values stay within this share of the scale, this share of a side away. */
const FLAT = 0.002;
const BESIDE = 0.025;

/** Whether the raster hardly changes around most of a line. */
function isFlatAround({ size, values }: Raster, { points, level }: ContourLine, slack: number): boolean {
  const step = Math.round(BESIDE * size);
  const offset = [step, -step, step * size, -step * size];
  const flat = points.filter(([x, y]) => {
    const i = size * Math.floor(y) + Math.floor(x);
    return offset.every((o) => !(Math.abs((values[i + o] ?? NaN) - level) > slack));
  });
  return flat.length > points.length / 2;
}

/** Contours without those of fragile levels that trace noise. */
function soundLines({ scale, keyLevels }: MapSubject, raster: Raster, lines: readonly ContourLine[]): ContourLine[] {
  const fragile = keyLevels.filter(({ isFragile }) => isFragile).map(({ value }) => value);
  const slack = FLAT * (scale.high - scale.low);
  const sound = lines.filter((line) => !fragile.includes(line.level) || !isFlatAround(raster, line, slack));
  const noisy = fragile.filter((level) => {
    const length = sound.reduce((sum, line) => sum + (line.level === level ? lengthOf(line.points) : 0), 0);
    return length > LONGEST * raster.size;
  });
  return sound.filter(({ level }) => !noisy.includes(level));
}

/** The contours of a subject in picture coordinates. */
export function linesOf(subject: MapSubject, raster: Raster, { left, top, size }: Frame): Line[] {
  const keys = subject.keyLevels;
  const levels = [...roundLevels(subject, raster), ...keys.map(({ value }) => value)];
  const decimals = decimalsOf(subject.scale.ticks);
  const unit = size / raster.size;
  return soundLines(subject, raster, contourLines(raster, levels)).map(({ level, points }) => {
    const key = keys.find(({ value }) => value === level);
    return {
      points: points.map(([x, y]) => [left + x * unit, top + y * unit] as const),
      level,
      key,
      text: key?.text ?? shownValue(subject, level, decimals),
    };
  });
}

/** Labels on contours, one a text, on its longest line that has room; key levels first. */
export function lineLabels(lines: readonly Line[], type: number, taken: Box[], bounds: Box): Map<Line, LineLabel> {
  const sorted = lines.toSorted(
    (p, q) => Number(q.key !== undefined) - Number(p.key !== undefined) || q.points.length - p.points.length,
  );
  const labels = new Map<Line, LineLabel>();
  const labelled = new Set<string>();
  for (const line of sorted) {
    if (labelled.has(line.text) || labels.size >= MOST_LABELS) continue;
    const label = placeOnLine(line.points, line.text, type, taken, bounds);
    if (!label) continue;
    labelled.add(line.text);
    labels.set(line, label);
  }
  return labels;
}

/** A contour as it is drawn: interrupted under its label. */
export function drawnLine({ palette, scale }: MapSubject, { points, level, key }: Line, label?: LineLabel): DrawnLine {
  const pieces = label ? withoutStretch(points, label.from, label.to) : [points];
  return {
    path: pieces.map(pathOf).join(''),
    ink: inkOn(palette, shareOn(scale, level)),
    isKey: key !== undefined,
    isDashed: key?.isDashed ?? false,
  };
}
