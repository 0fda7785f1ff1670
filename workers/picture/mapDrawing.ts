/** A face-on map as things to draw: pixels, lines, marks and labels in picture coordinates. */
import type { Face } from '../../engine/geometry/face.ts';
import type { Plant } from '../../engine/index.ts';
import { contourLines, type ContourLine } from './contourLines.ts';
import { aperturePath, filamentsAround, outlinePath, toPicture, witnessesOn, type Frame } from './frame.ts';
import { inkOn, paintRaster, type PaletteName } from './paint.ts';
import { placeBeside, placeOnLine, withoutStretch, type Box, type LineLabel, type PlacedLabel } from './placeLabels.ts';
import { grownRaster, rasterMap, type Raster } from './rasterMap.ts';
import { decimalsOf, extentOf, shareOn, type ValueScale } from './valueScale.ts';

/** A unit that numbers are written in, and how many of it make one of the drawing's own. */
export interface ShownUnit {
  readonly unit: string;
  readonly factor: number;
}

/** A contour that matters more than the round ones. */
export interface KeyLevel {
  readonly value: number;
  readonly text: string;
  readonly isDashed: boolean;
}

/** A place that is pointed out. */
export interface KeyPlace {
  /** m */
  readonly x: number;
  readonly y: number;
  readonly sign: '▼' | '▲';
  readonly text: string;
}

/** What a map shows. */
export interface MapSubject {
  readonly plant: Plant;
  readonly face: Face;
  readonly label: string;
  /** [points] NaN where there is no value */
  readonly values: Float64Array;
  /** [points] m; hatched where it is zero */
  readonly thickness: Float64Array;
  readonly scale: ValueScale;
  readonly palette: PaletteName;
  readonly keyLevels: readonly KeyLevel[];
  readonly keyPlaces: readonly KeyPlace[];
  /** named values beside the colour bar */
  readonly barMarks: readonly { readonly value: number; readonly text: string }[];
  /** of the values, as shown */
  readonly unit: ShownUnit;
  /** of metres, as shown */
  readonly lengthUnit: ShownUnit;
}

/** A map's pixels: values, and where nothing arrives. */
export interface MapRaster {
  readonly raster: Raster;
  readonly bare: Uint8Array | null;
}

/** Pixels that a map is grown by under its outline. */
const GROWN = 2;

/** The pixels of a subject. */
export function mapRaster({ face, values, thickness }: MapSubject, reach: number, size: number): MapRaster {
  const raw = rasterMap(face, values, reach, size);
  if (!thickness.some((value) => value <= 0) && !values.some(Number.isNaN))
    return { raster: grownRaster(raw, GROWN, () => true), bare: null };
  const bareRaw = rasterMap(face, thickness, reach, size);
  const coat = grownRaster(bareRaw, GROWN, () => true);
  const bare = Uint8Array.from(coat.values, (value) => (value <= 0 ? 1 : 0));
  return {
    raster: grownRaster(raw, GROWN, (i) => Number.isNaN(bareRaw.values[i])),
    bare: bare.includes(1) ? bare : null,
  };
}

/** The coloured pixels of a subject as RGBA bytes. */
export function mapPixels(subject: MapSubject, { raster, bare }: MapRaster): Uint8ClampedArray<ArrayBuffer> {
  return paintRaster(raster, bare, subject.scale, subject.palette);
}

export interface DrawnLine {
  readonly path: string;
  readonly ink: string;
  readonly isKey: boolean;
  readonly isDashed: boolean;
}

export interface DrawnLabel extends PlacedLabel {
  readonly isKey: boolean;
}

export interface MapDrawing {
  readonly outline: string;
  readonly aperture: string;
  readonly lines: readonly DrawnLine[];
  readonly labels: readonly DrawnLabel[];
  /** x, y of each witness */
  readonly witnesses: readonly (readonly [number, number])[];
  readonly places: readonly { readonly x: number; readonly y: number; readonly path: string }[];
  /** one stroke per filament outside the rim */
  readonly filaments: string;
  readonly scaleBar: { readonly x: number; readonly y: number; readonly length: number; readonly text: string };
}

const n = (value: number): string => String(Number(value.toFixed(1)));

type Points = ContourLine['points'];

const pathOf = (points: Points): string => `M${points.map(([x, y]) => `${n(x)} ${n(y)}`).join('L')}`;

/** A value of the subject as text, without its unit. */
export function shownValue({ unit }: Pick<MapSubject, 'unit'>, value: number, decimals: number): string {
  const shown = Math.max(0, decimals - Math.max(0, Math.round(Math.log10(unit.factor))));
  const text = (value * unit.factor).toFixed(shown);
  return (/^-0(\.0*)?$/.test(text) ? text.slice(1) : text).replace('-', '\u2212');
}

/** Levels that are labelled at most. */
const MOST_LABELS = 16;

/** Round levels inside the range of the values, all but those that a key level is drawn at. */
function roundLevels({ scale, keyLevels }: MapSubject, { values }: Raster): number[] {
  const [low, high] = extentOf(values);
  const span = scale.high - scale.low;
  return scale.ticks.filter(
    (tick) =>
      tick > low &&
      tick < high &&
      high - low > 1e-3 * span &&
      keyLevels.every(({ value }) => Math.abs(value - tick) > 1e-3 * span),
  );
}

interface Line {
  readonly points: Points;
  readonly level: number;
  readonly key: KeyLevel | undefined;
  readonly text: string;
}

/** The contours of a subject in picture coordinates. */
function linesOf(subject: MapSubject, raster: Raster, { left, top, size }: Frame): Line[] {
  const keys = subject.keyLevels;
  const levels = [...roundLevels(subject, raster), ...keys.map(({ value }) => value)];
  const decimals = decimalsOf(subject.scale.ticks);
  const unit = size / raster.size;
  return contourLines(raster, levels).map(({ level, points }) => {
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
function lineLabels(lines: readonly Line[], type: number, taken: Box[], bounds: Box): Map<Line, LineLabel> {
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
function drawnLine({ palette, scale }: MapSubject, { points, level, key }: Line, label?: LineLabel): DrawnLine {
  const pieces = label ? withoutStretch(points, label.from, label.to) : [points];
  return {
    path: pieces.map(pathOf).join(''),
    ink: inkOn(palette, shareOn(scale, level)),
    isKey: key !== undefined,
    isDashed: key?.isDashed ?? false,
  };
}

/** Strokes for the filaments outside the rim, along the coil and at least `least` long. */
function filamentStrokes(plant: Plant, frame: Frame, least: number): string {
  return filamentsAround(plant)
    .map(({ center: [x, y], coilAxis: [ax, ay], length }) => {
      const [px, py] = toPicture(frame, x, y);
      const scale = frame.size / (2 * frame.reach);
      const flat = Math.hypot(ax, ay);
      const half = Math.max(least, length * flat * scale) / 2;
      const [dx, dy] = flat > 0.1 ? [(ax / flat) * half, (-ay / flat) * half] : [0.5, 0];
      return `M${n(px - dx)} ${n(py - dy)}L${n(px + dx)} ${n(py + dy)}`;
    })
    .join('');
}

/** The round length nearest below a share of the map's width. */
function roundLength(reach: number, { factor }: ShownUnit): number {
  const most = 0.22 * 2 * reach * factor;
  const decade = 10 ** Math.floor(Math.log10(most));
  const lead = [5, 2, 1].find((digit) => digit * decade <= most) ?? 1;
  return lead * decade;
}

/** A triangle that points at the thinnest place, or stands on the thickest. */
function signPath(x: number, y: number, sign: KeyPlace['sign'], type: number): string {
  const [half, up] = [0.45 * type, sign === '▼' ? 1 : -1];
  return `M${n(x - half)} ${n(y - 0.8 * half * up)}L${n(x + half)} ${n(y - 0.8 * half * up)}L${n(x)} ${n(y + half * up)}z`;
}

/** Least length of a filament's stroke, as a share of the type size. */
const STROKE = 0.6;
/** Witnesses that carry their name; more would hide the map. */
const MOST_NAMES = 24;

/**
 * Everything on a map but its pixels.
 *
 * @param type size of the labels, picture units
 */
export function mapDrawing(subject: MapSubject, { raster }: MapRaster, frame: Frame, type: number): MapDrawing {
  const { plant, lengthUnit } = subject;
  const bounds: Box = [frame.left, frame.top, frame.left + frame.size, frame.top + frame.size];
  const length = roundLength(frame.reach, lengthUnit);
  const scaleBar = {
    x: frame.left,
    y: frame.top + frame.size - 6,
    length: (length / lengthUnit.factor / (2 * frame.reach)) * frame.size,
    text: `${Number(length.toPrecision(3))} ${lengthUnit.unit}`,
  };
  const taken: Box[] = [[scaleBar.x, scaleBar.y - 2.2 * type, scaleBar.x + scaleBar.length + type, scaleBar.y + type]];
  const witnesses = witnessesOn(plant).map(({ name, position: [x, y] }) => ({ name, at: toPicture(frame, x, y) }));
  const places = subject.keyPlaces.map((place) => {
    const [x, y] = toPicture(frame, place.x, place.y);
    return { x, y, path: signPath(x, y, place.sign, type), text: place.text };
  });
  const half = 0.5 * type;
  for (const [x, y] of [...witnesses.map(({ at }) => at), ...places.map((p) => [p.x, p.y] as const)])
    taken.push([x - half, y - half, x + half, y + half]);
  const beside = (x: number, y: number, text: string, isKey: boolean): DrawnLabel => ({
    ...placeBeside(x, y, text, type, taken, bounds),
    isKey,
  });
  const names = [
    ...places.map(({ x, y, text }) => beside(x, y, text, true)),
    ...witnesses.slice(0, MOST_NAMES).map(({ name, at: [x, y] }) => beside(x, y, name, false)),
  ];
  const lines = linesOf(subject, raster, frame);
  const onLines = lineLabels(lines, type, taken, bounds);
  return {
    outline: outlinePath(frame, plant.shape),
    aperture: aperturePath(frame, plant.shape),
    lines: lines.map((line) => drawnLine(subject, line, onLines.get(line))),
    labels: [...Array.from(onLines, ([{ key }, label]) => ({ ...label, isKey: key !== undefined })), ...names],
    witnesses: witnesses.map(({ at }) => at),
    places,
    filaments: filamentStrokes(plant, frame, STROKE * type),
    scaleBar,
  };
}
