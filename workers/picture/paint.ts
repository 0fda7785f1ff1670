/** Values as colours: perceptually even, and told apart by colour-blind eyes too. */
import { interpolateCividis, interpolatePuOr } from 'd3-scale-chromatic';
import type { Raster } from './rasterMap.ts';
import { shareOn, type ValueScale } from './valueScale.ts';

/** `even` for amounts; `twoSided` for differences, pale at zero. */
export type PaletteName = 'even' | 'twoSided';

const INTERPOLATORS: Readonly<Record<PaletteName, (share: number) => string>> = {
  even: interpolateCividis,
  // orange below, violet above; both ends stop short of black
  twoSided: (share) => interpolatePuOr(0.92 - 0.84 * share),
};
const COLOURS = 256;
/** Colours of places where nothing arrives, as [red, green, blue]: ground and hatch. */
const BARE_GROUND = [206, 208, 210];
const BARE_HATCH = [70, 74, 78];
/** Hatch lines across a picture. */
const HATCHES = 56;

const channelsOf = (css: string): number[] => (css.match(/\d+/g) ?? []).map(Number);

/** [3·256] red, green, blue from the low end to the high one. */
function colourTable(palette: PaletteName): Uint8Array {
  return Uint8Array.from(
    Array.from({ length: COLOURS }, (_, i) => channelsOf(INTERPOLATORS[palette](i / (COLOURS - 1)))).flat(),
  );
}

const TABLES: Readonly<Record<PaletteName, Uint8Array>> = {
  even: colourTable('even'),
  twoSided: colourTable('twoSided'),
};

/** The colour at a share of the scale, for CSS and SVG. */
export function colourAt(palette: PaletteName, share: number): string {
  return INTERPOLATORS[palette](Math.min(1, Math.max(0, share)));
}

/** Relative luminance of the colour at a share of the scale, 0 to 1 (ITU-R BT.709 weights, sRGB decoded as a square). */
function luminanceAt(palette: PaletteName, share: number): number {
  const [r = 0, g = 0, b = 0] = channelsOf(colourAt(palette, share)).map((value) => (value / 255) ** 2);
  return 0.2126 * r + 0.7152 * g + 0.0722 * b;
}

/** Luminance at which black and white stand out equally: (L + 0.05)² = 1.05 · 0.05, WCAG 2.2 contrast ratio. */
const EVEN_CONTRAST = 0.179;

/** Black or white, whichever stands out on the colour at a share of the scale. */
export function inkOn(palette: PaletteName, share: number): '#000000' | '#ffffff' {
  return luminanceAt(palette, share) > EVEN_CONTRAST ? '#000000' : '#ffffff';
}

/**
 * RGBA bytes of a raster; transparent off the glass, hatched where nothing arrives.
 *
 * @param bare [size²] 1 where nothing arrives, or null if something arrives everywhere
 */
export function paintRaster(
  { size, values }: Raster,
  bare: Uint8Array | null,
  scale: ValueScale,
  palette: PaletteName,
): Uint8ClampedArray<ArrayBuffer> {
  const table = TABLES[palette];
  const bytes = new Uint8ClampedArray(4 * values.length);
  const period = Math.max(6, Math.round(size / HATCHES));
  for (let i = 0; i < values.length; i++) {
    const isBare = bare !== null && bare[i] === 1;
    if (!isBare && Number.isNaN(values[i])) continue;
    const o = 4 * i;
    bytes[o + 3] = 255;
    if (isBare) {
      const isHatch = ((i % size) + Math.floor(i / size)) % period < period / 4;
      bytes.set(isHatch ? BARE_HATCH : BARE_GROUND, o);
      continue;
    }
    const entry = 3 * Math.round((COLOURS - 1) * shareOn(scale, values[i]!));
    for (let c = 0; c < 3; c++) bytes[o + c] = table[entry + c]!;
  }
  return bytes;
}
