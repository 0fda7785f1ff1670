/** The thickness map as a PNG: the same picture that the page exports. */
import { readFile } from 'node:fs/promises';
import { createRequire } from 'node:module';
import { initWasm, Resvg } from '@resvg/resvg-wasm';
import { PNG } from 'pngjs';
import { verdictOf, type Coat } from '../../engine/index.ts';
import { coatMap, METRES, NANOMETRES, thicknessValue } from '../picture/coatMap.ts';
import { mapPixels, mapRaster, type MapRaster } from '../picture/mapDrawing.ts';
import type { MapSubject } from '../picture/mapSubject.ts';
import { mapPicture, MAP_SIZE, pictureFrame } from '../picture/mapPicture.ts';
import { extentOf, roundScale } from '../picture/valueScale.ts';

/** The map's pixels as a data: URL. */
function pngUrl(subject: MapSubject, raster: MapRaster): string {
  const png = new PNG({ width: MAP_SIZE, height: MAP_SIZE });
  png.data = Buffer.from(mapPixels(subject, raster));
  return `data:image/png;base64,${PNG.sync.write(png).toString('base64')}`;
}

/** The picture as SVG. */
export function mapSvg(coat: Coat): string {
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
  const raster = mapRaster(subject, pictureFrame(subject).reach, MAP_SIZE);
  const caption = { title: coat.plant.name, sentence: verdictOf(coat).sentence };
  return mapPicture(subject, raster, pngUrl(subject, raster), caption);
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
  return new Resvg(mapSvg(coat), { font: { fontBuffers: fonts, defaultFontFamily: 'Inter' } }).render().asPng();
}
