/** A face-on map as things to draw: pixels, lines, marks and labels in picture coordinates. */
import type { Plant } from '../../engine/index.ts';
import { drawnLine, lineLabels, linesOf, type DrawnLine } from './drawnContours.ts';
import { aperturePath, filamentsAround, outlinePath, toPicture, witnessesOn, type Frame } from './frame.ts';
import type { KeyPlace, MapSubject, ShownUnit } from './mapSubject.ts';
import { paintRaster } from './paint.ts';
import { placeBeside, type Box, type PlacedLabel } from './placeLabels.ts';
import { grownRaster, rasterMap, type Raster } from './rasterMap.ts';

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
  const [half, up] = [0.55 * type, sign === '▼' ? 1 : -1];
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
