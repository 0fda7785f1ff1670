/** Numbers as colour: perceptually even and safe for colour-blind eyes, the same on the mirror and in the legend. */
import { interpolateCividis } from 'd3-scale-chromatic';
import { DataTexture, LinearFilter, SRGBColorSpace } from 'three';
import type { Coat } from '../../engine/index.ts';
import { extentOf, type ValueScale } from '../../workers/picture/valueScale.ts';

/** The range of values that the colours span, and the numbers written beside it, in the unit of the field. */
export type ColorScale = ValueScale;

const COLORS = 256;
/** Colour where there is no number: a grey that the scale does not contain. */
const NO_NUMBER = [168, 168, 172, 255];

/** Least and most thickness over the whole glass, nm. */
export function thicknessRange_nm({ thickness }: Coat): readonly [number, number] {
  const [low, high] = extentOf(thickness);
  return [low * 1e9, high * 1e9];
}

const channels = (share: number): number[] => (interpolateCividis(share).match(/\d+/g) ?? []).map(Number);

/** Colour of a share as red, green, blue, 0 to 255. */
export function colorOf(share: number): readonly [number, number, number] {
  const [r = 0, g = 0, b = 0] = channels(share);
  return [r, g, b];
}

/**
 * The colours as a texture: looked up with the value, so that numbers are interpolated and not colours.
 * The lower row holds the scale, the upper one the colour for no number.
 */
export function colorTexture(): DataTexture {
  const scale = Array.from({ length: COLORS }, (_, i) => [...channels(i / (COLORS - 1)), 255]).flat();
  const none = Array.from({ length: COLORS }, () => NO_NUMBER).flat();
  const texture = new DataTexture(Uint8Array.from([...scale, ...none]), COLORS, 2);
  texture.colorSpace = SRGBColorSpace;
  texture.minFilter = LinearFilter;
  texture.magFilter = LinearFilter;
  texture.needsUpdate = true;
  return texture;
}

/** Row of the texture in which the scale lies, and the one for no number. */
export const SCALE_ROW = 0.25;
export const NONE_ROW = 0.75;

/** Texture coordinate of a share: the middle of the first texel at 0, of the last at 1. */
export function texelOf(share: number): number {
  return (share * (COLORS - 1) + 0.5) / COLORS;
}

/** The colours as a CSS gradient, upwards. */
export function colorGradient(): string {
  const stops = Array.from({ length: 33 }, (_, i) => `${interpolateCividis(i / 32)} ${((100 * i) / 32).toFixed(3)}%`);
  return `linear-gradient(to top, ${stops.join(', ')})`;
}
