/** A map as one self-contained SVG: title, sentence, map, colour bar and unit, on white. */
import { barTexts } from './colourBar.ts';
import type { Frame } from './frame.ts';
import { mapReach } from './frame.ts';
import { mapDrawing, type MapDrawing, type MapRaster } from './mapDrawing.ts';
import type { MapSubject } from './mapSubject.ts';
import { colourAt } from './paint.ts';
import { brokenLines, INK, QUIET, svgPicture, svgText } from './svgText.ts';

/** Side of the map in pixels, and of its raster. */
export const MAP_SIZE = 640;
const LEFT = 40;
const TOP = 96;
const WIDTH = 880;
const HEIGHT = TOP + MAP_SIZE + 56;
const BAR_X = LEFT + MAP_SIZE + 96;
const BAR_WIDTH = 24;
const STRIPES = 128;
const LABEL = 12;

/** Frame of the map in its picture. */
export function pictureFrame({ plant }: MapSubject): Frame {
  return { centerX: plant.shape.centerX, reach: mapReach(plant), size: MAP_SIZE, left: LEFT, top: TOP };
}

function colourBar(subject: MapSubject): string[] {
  const yAt = (share: number): number => TOP + MAP_SIZE * (1 - share);
  const stripes = Array.from({ length: STRIPES }, (_, i) => {
    const y = yAt((i + 1) / STRIPES);
    return `<rect x="${BAR_X}" y="${y}" width="${BAR_WIDTH}" height="${MAP_SIZE / STRIPES + 0.6}" fill="${colourAt(subject.palette, (i + 0.5) / STRIPES)}"/>`;
  });
  const { ticks, marks, beyond } = barTexts(subject, 16 / MAP_SIZE);
  const end = BAR_X + BAR_WIDTH;
  return [
    ...stripes,
    `<rect x="${BAR_X}" y="${TOP}" width="${BAR_WIDTH}" height="${MAP_SIZE}" fill="none" stroke="${INK}"/>`,
    ...ticks.map(
      ({ text, share }) =>
        `<path d="M${end} ${yAt(share)}h6" stroke="${INK}"/>${svgText(end + 10, yAt(share) + 5, text)}`,
    ),
    ...marks.map(({ text, share, textShare }) => {
      const isMean = text === 'mean';
      const dash = text.startsWith('+') ? ' stroke-dasharray="4 2"' : '';
      const width = isMean ? 2 : 1.2;
      return (
        `<path d="M${BAR_X - 18} ${yAt(textShare)}l10 ${yAt(share) - yAt(textShare)}h8" fill="none" stroke="${INK}" stroke-width="${width}"${dash}/>` +
        svgText(BAR_X - 22, yAt(textShare) + 4, text, { size: 12, weight: isMean ? 600 : 400, anchor: 'end' })
      );
    }),
    svgText(WIDTH - 16, TOP - 10, `${subject.label}, ${subject.unit.unit}`, { weight: 600, anchor: 'end' }),
    ...(beyond.length > 0
      ? [svgText(WIDTH - 16, TOP + MAP_SIZE + 20, `${beyond.join(' and ')} off the scale`, { size: 12, anchor: 'end' })]
      : []),
  ];
}

const SQUARE = 3.5;

function mapBody(drawing: MapDrawing, pixels: string): string[] {
  const { outline, aperture, lines, labels, witnesses, places, filaments, scaleBar: bar } = drawing;
  const dash = (isDashed: boolean): string => (isDashed ? ' stroke-dasharray="7 4"' : '');
  return [
    `<clipPath id="glass"><path d="${outline}" clip-rule="evenodd"/></clipPath>`,
    '<g clip-path="url(#glass)">',
    `<image x="${LEFT}" y="${TOP}" width="${MAP_SIZE}" height="${MAP_SIZE}" href="${pixels}"/>`,
    ...lines.map(
      ({ path, ink, isKey, isDashed }) =>
        `<path d="${path}" fill="none" stroke="${ink}" stroke-width="${isKey ? 2.4 : 1}" stroke-opacity="${isKey ? 1 : 0.6}"${dash(isDashed)}/>`,
    ),
    '</g>',
    `<path d="${outline}" fill="none" stroke="${INK}"/>`,
    aperture ? `<path d="${aperture}" fill="none" stroke="${INK}" stroke-dasharray="1.5 4" stroke-width="1.5"/>` : '',
    filaments ? `<path d="${filaments}" fill="none" stroke="${INK}" stroke-width="2"/>` : '',
    ...witnesses.map(
      ([x, y]) =>
        `<rect x="${(x - SQUARE).toFixed(1)}" y="${(y - SQUARE).toFixed(1)}" width="${2 * SQUARE}" height="${2 * SQUARE}" fill="#ffffff" stroke="#000000" stroke-width="1.5"/>`,
    ),
    ...places.map(({ path }) => `<path d="${path}" fill="${INK}" stroke="#ffffff" stroke-width="1.5"/>`),
    ...labels.map(({ text, x, y, turn, isKey }) =>
      svgText(x, y + 0.36 * LABEL, text, {
        size: LABEL,
        weight: isKey ? 600 : 400,
        anchor: 'middle',
        hasHalo: true,
        turn,
      }),
    ),
    `<path d="M${bar.x} ${bar.y - 5}v5h${bar.length.toFixed(1)}v-5" fill="none" stroke="${INK}" stroke-width="1.5"/>`,
    svgText(bar.x + 4, bar.y - 8, bar.text, { size: LABEL }),
  ];
}

export interface MapCaption {
  readonly title: string;
  readonly sentence: string;
}

/**
 * The picture.
 *
 * @param pixels address of the coloured pixels, a data: URL
 */
export function mapPicture(subject: MapSubject, raster: MapRaster, pixels: string, caption: MapCaption): string {
  const drawing = mapDrawing(subject, raster, pictureFrame(subject), LABEL);
  const tickNote = drawing.filaments ? '; strokes outside the rim: filaments' : '';
  const bareNote = raster.bare ? '; hatched: nothing arrives' : '';
  return svgPicture(WIDTH, HEIGHT, caption.title, [
    svgText(LEFT, 34, caption.title, { size: 20, weight: 600 }),
    ...brokenLines(caption.sentence, 92).map((line, i) => svgText(LEFT, 58 + 18 * i, line)),
    ...mapBody(drawing, pixels),
    ...colourBar(subject),
    svgText(LEFT, TOP + MAP_SIZE + 38, `x to the right, y up, seen from the filaments${tickNote}${bareNote}`, {
      size: 12,
      fill: QUIET,
    }),
  ]);
}
