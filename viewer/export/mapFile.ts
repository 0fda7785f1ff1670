/** The face-on map as one self-contained picture. */
import { verdictOf, type Coat } from '../../engine/index.ts';
import { mapPixels, mapRaster } from '../../workers/picture/mapDrawing.ts';
import { mapPicture, MAP_SIZE, pictureFrame } from '../../workers/picture/mapPicture.ts';
import { mapSubjectOf } from '../charts/mapSubject.ts';
import type { SharedRange } from '../format/mapScale.ts';
import type { MapView } from '../state/mapView.ts';
import type { Units } from '../state/units.ts';
import { textFile } from './fileKinds.ts';
import { pixelsUrl, svgToPng } from './svgToPng.ts';

/** What the page shows of a coat. */
export interface MapRequest {
  readonly coat: Coat;
  readonly view: MapView;
  readonly units: Units;
  readonly sharedRange?: SharedRange;
}

/** Writes RGBA bytes of a square as a data: URL. */
type Encode = (bytes: Uint8ClampedArray<ArrayBuffer>, size: number) => string;

/**
 * The map with title, verdict, colour bar and unit as SVG.
 *
 * @throws Error if the coat was computed without the quantity
 */
export function mapSvg({ coat, view, units, sharedRange }: MapRequest, encode: Encode = pixelsUrl): string {
  const subject = mapSubjectOf(coat, view, units, sharedRange);
  if (!subject) throw new Error('the coat was computed without arrival angles; choose the thickness or its deviation');
  const raster = mapRaster(subject, pictureFrame(subject).reach, MAP_SIZE);
  const { sentence } = verdictOf(coat);
  return mapPicture(subject, raster, encode(mapPixels(subject, raster), MAP_SIZE), {
    title: coat.plant.name,
    sentence,
  });
}

// async, so that a fault inside becomes a rejection

export async function exportMapSvg(request: MapRequest): Promise<Blob> {
  return textFile(mapSvg(request), 'svg');
}

export async function exportMapPng(request: MapRequest): Promise<Blob> {
  return svgToPng(mapSvg(request));
}
