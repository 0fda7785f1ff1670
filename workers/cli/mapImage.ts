/** The thickness map as a picture: face-on, with colour bar, tolerance marks and title. */
import { readFile } from 'node:fs/promises';
import { createRequire } from 'node:module';
import { initWasm, Resvg } from '@resvg/resvg-wasm';
import { scaleLinear } from 'd3-scale';
import { interpolateViridis } from 'd3-scale-chromatic';
import { PNG } from 'pngjs';
import { verdictOf, type Coat } from '../../engine/index.ts';
import { colourRaster, rasterMap } from './rasterMap.ts';

const MAP = 640;
const LEFT = 40;
const TOP = 96;
const WIDTH = 880;
const HEIGHT = TOP + MAP + 56;
const BAR_X = LEFT + MAP + 48;
const INK = '#1c2329';
const FONT = 'Inter';

const escape = (text: string): string => text.replace(/[&<>"']/g, (sign) => `&#${sign.charCodeAt(0)};`);

function text(
  x: number,
  y: number,
  content: string,
  style: { size?: number; weight?: number; anchor?: 'start' | 'middle' | 'end' } = {},
): string {
  const { size = 14, weight = 400, anchor = 'start' } = style;
  return `<text x="${x}" y="${y}" font-family="${FONT}" font-size="${size}" font-weight="${weight}" text-anchor="${anchor}" fill="${INK}">${escape(content)}</text>`;
}

/** Breaks a sentence into lines of at most `most` characters, at spaces. */
function lines(sentence: string, most: number): string[] {
  const broken: string[] = [''];
  for (const word of sentence.split(' ')) {
    const last = broken.length - 1;
    if (`${broken[last]} ${word}`.trim().length <= most) broken[last] = `${broken[last]} ${word}`.trim();
    else broken.push(word);
  }
  return broken;
}

/** The map as base64 PNG; drawn by its own pixels, so that a colour is its number. */
function mapPng(coat: Coat, low: number, high: number): string {
  const png = new PNG({ width: MAP, height: MAP });
  png.data = Buffer.from(
    colourRaster(rasterMap(coat.face, coat.thickness, coat.plant.shape.rimRadius, MAP), low, high),
  );
  return PNG.sync.write(png).toString('base64');
}

function colourBar(low: number, high: number, coat: Coat): string {
  const stripes = Array.from(
    { length: 128 },
    (_, i) =>
      `<rect x="${BAR_X}" y="${TOP + ((127 - i) * MAP) / 128}" width="24" height="${MAP / 128 + 0.6}" fill="${interpolateViridis((i + 0.5) / 128)}"/>`,
  );
  const scale = scaleLinear()
    .domain([low, high])
    .range([TOP + MAP, TOP]);
  const ticks = scale
    .ticks(8)
    .map(
      (value) =>
        `<path d="M${BAR_X + 24} ${scale(value)}h6" stroke="${INK}"/>${text(BAR_X + 36, scale(value) + 5, String(value))}`,
    );
  const mean = coat.statistics.mean.value * 1e9;
  const marks = [1 - coat.plant.film.tolerance, 1, 1 + coat.plant.film.tolerance].map((share) => {
    const value = mean * share;
    if (value < low || value > high) return '';
    const label = share === 1 ? 'mean' : share < 1 ? '− tol.' : '+ tol.';
    return `<path d="M${BAR_X - 4} ${scale(value)}h32" stroke="${INK}" stroke-width="${share === 1 ? 2 : 1}" ${share === 1 ? '' : 'stroke-dasharray="3 2"'}/>${text(BAR_X + 84, scale(value) + 5, label, { size: 12 })}`;
  });
  return [
    ...stripes,
    `<rect x="${BAR_X}" y="${TOP}" width="24" height="${MAP}" fill="none" stroke="${INK}"/>`,
    ...ticks,
    ...marks,
    text(BAR_X - 4, TOP - 12, 'thickness, nm', { weight: 600 }),
  ].join('');
}

/** The picture as SVG. */
export function mapSvg(coat: Coat): string {
  const { shape } = coat.plant;
  const low = coat.statistics.minimum.value * 1e9;
  const high = Math.max(coat.statistics.maximum.value * 1e9, low + 1e-6);
  const title = lines(verdictOf(coat).sentence, 92);
  const image = `<image x="${LEFT}" y="${TOP}" width="${MAP}" height="${MAP}" href="data:image/png;base64,${mapPng(coat, low * 1e-9, high * 1e-9)}"/>`;
  const radius = shape.rimRadius;
  return [
    `<svg xmlns="http://www.w3.org/2000/svg" width="${WIDTH}" height="${HEIGHT}" viewBox="0 0 ${WIDTH} ${HEIGHT}"><rect width="100%" height="100%" fill="#ffffff"/>`,
    text(LEFT, 34, coat.plant.name, { size: 20, weight: 600 }),
    ...title.map((line, i) => text(LEFT, 58 + 18 * i, line)),
    image,
    colourBar(low, high, coat),
    `<path d="M${LEFT} ${TOP + MAP + 16}h${MAP}" stroke="${INK}"/><path d="M${LEFT} ${TOP + MAP + 11}v10M${LEFT + MAP} ${TOP + MAP + 11}v10" stroke="${INK}"/>`,
    text(
      LEFT + MAP / 2,
      TOP + MAP + 38,
      `${(2 * radius).toFixed(2)} m; x to the right, y up, seen from the filaments`,
      { anchor: 'middle', size: 13 },
    ),
    '</svg>',
  ].join('\n');
}

let started: Promise<void> | undefined;

/** The picture as PNG. */
export async function mapImage(coat: Coat): Promise<Uint8Array> {
  const find = createRequire(import.meta.url).resolve;
  started ??= readFile(find('@resvg/resvg-wasm/index_bg.wasm')).then(async (wasm) => initWasm(wasm));
  await started;
  const fonts = await Promise.all(
    ['400Regular/Inter_400Regular.ttf', '600SemiBold/Inter_600SemiBold.ttf'].map(async (file) =>
      readFile(find(`@expo-google-fonts/inter/${file}`)),
    ),
  );
  return new Resvg(mapSvg(coat), { font: { fontBuffers: fonts, defaultFontFamily: FONT } }).render().asPng();
}
