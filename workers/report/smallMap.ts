/** The thickness map, small: the shared map's drawing with a slim colour bar. */
import type { Coat } from '../../engine/index.ts';
import { coatMap, METRES, NANOMETRES, thicknessValue } from '../picture/coatMap.ts';
import { barTexts } from '../picture/colourBar.ts';
import { mapReach, type Frame } from '../picture/frame.ts';
import { mapDrawing, mapPixels, mapRaster } from '../picture/mapDrawing.ts';
import { colourAt } from '../picture/paint.ts';
import { extentOf, roundScale } from '../picture/valueScale.ts';
import { verdictOf } from '../../engine/index.ts';
import { label, n, path, picture, WIDTH } from './drawing.ts';
import { pngUrl } from './pngUrl.ts';

const SIZE = 240;
const LEFT = 16;
const TOP = 20;
const HEIGHT = TOP + SIZE + 10;
/** Pixels of the raster for each unit, for print. */
const FINE = 2;
const TYPE = 11;
const BAR_X = 330;
const BAR_WIDTH = 14;
const STRIPES = 64;
const SQUARE = 2.5;

/** The map of a coat. */
export function smallMap(coat: Coat): string {
  const values = coat.thickness.map(thicknessValue);
  const subject = coatMap(
    coat,
    { values, label: 'Thickness', unit: 'nm' },
    {
      scale: roundScale(extentOf(values)),
      valueOf: thicknessValue,
      unit: NANOMETRES,
      thicknessUnit: NANOMETRES,
      lengthUnit: METRES,
    },
  );
  const { plant } = coat;
  const frame: Frame = { centerX: plant.shape.centerX, reach: mapReach(plant), size: SIZE, left: LEFT, top: TOP };
  const raster = mapRaster(subject, frame.reach, FINE * SIZE);
  const drawing = mapDrawing(subject, raster, frame, TYPE);
  const pixels = pngUrl(FINE * SIZE, FINE * SIZE, mapPixels(subject, raster));
  const y = (share: number): number => TOP + SIZE * (1 - share);
  const { ticks, marks } = barTexts(subject, 14 / SIZE);
  const { scaleBar: bar } = drawing;
  return picture(HEIGHT, `Map of the thickness. ${verdictOf(coat).sentence}`, [
    `<clipPath id="glass"><path d="${drawing.outline}" clip-rule="evenodd"/></clipPath>`,
    `<g clip-path="url(#glass)"><image x="${LEFT}" y="${TOP}" width="${SIZE}" height="${SIZE}" href="${pixels}"/>`,
    ...drawing.lines.map(
      ({ path: d, ink, isKey, isDashed }) =>
        `<path d="${d}" fill="none" stroke="${ink}" stroke-width="${isKey ? 1.8 : 0.8}" stroke-opacity="${isKey ? 1 : 0.6}"${isDashed ? ' stroke-dasharray="5 3"' : ''}/>`,
    ),
    '</g>',
    path(drawing.outline, 'axis'),
    path(drawing.aperture, 'axis dotted'),
    path(drawing.filaments, 'filament'),
    ...drawing.witnesses.map(
      ([wx, wy]) =>
        `<rect class="witness" x="${n(wx - SQUARE)}" y="${n(wy - SQUARE)}" width="${2 * SQUARE}" height="${2 * SQUARE}"/>`,
    ),
    ...drawing.places.map(({ path: d }) => path(d, 'sign')),
    ...drawing.labels.map(({ text, x, y: at, turn, isKey }) =>
      label(x, at + 0.36 * TYPE, text, { anchor: 'middle', kind: isKey ? 'halo strong small' : 'halo small', turn }),
    ),
    path(`M${n(bar.x)} ${n(bar.y - 4)}v4h${n(bar.length)}v-4`, 'axis'),
    label(bar.x + 3, bar.y - 7, bar.text, { kind: 'small' }),
    ...Array.from(
      { length: STRIPES },
      (_, i) =>
        `<rect x="${BAR_X}" y="${n(y((i + 1) / STRIPES))}" width="${BAR_WIDTH}" height="${n(SIZE / STRIPES + 0.6)}" fill="${colourAt(subject.palette, (i + 0.5) / STRIPES)}"/>`,
    ),
    ...ticks.map(
      ({ text, share }) =>
        path(`M${BAR_X + BAR_WIDTH} ${n(y(share))}h4`, 'axis') +
        label(BAR_X + BAR_WIDTH + 7, y(share) + 4, text, { kind: 'quiet' }),
    ),
    ...marks.map(
      ({ text, share, textShare }) =>
        path(`M${BAR_X - 12} ${n(y(textShare))}l6 ${n(y(share) - y(textShare))}h6`, 'axis') +
        label(BAR_X - 15, y(textShare) + 4, text, { anchor: 'end', kind: 'small' }),
    ),
    label(0, 13, 'Map of the coat, seen from the filaments', { kind: 'quiet' }),
    label(WIDTH, 13, 'thickness, nm', { anchor: 'end', kind: 'quiet' }),
  ]);
}
