/** Thickness as colour: perceptually even and safe for colour-blind eyes, the same on the mirror and in the legend. */
import { scaleLinear } from 'd3-scale';
import { interpolateCividis } from 'd3-scale-chromatic';
import { DataTexture, LinearFilter, SRGBColorSpace } from 'three';
import type { Coat } from '../../engine/index.ts';

/** The range of thickness that the colours span, nm, and the numbers written beside it. */
export interface ColorScale {
  readonly low_nm: number;
  readonly high_nm: number;
  readonly ticks_nm: readonly number[];
}

const TICKS = 6;
const COLORS = 256;
/** Share of the mean that an even coat's range spans at least, so that rounding is not painted as a pattern. */
const LEAST_SPAN = 0.002;

/** Least and most thickness over the whole glass, nm. */
export function thicknessRange_nm({ thickness }: Coat): readonly [number, number] {
  let [low, high] = [Infinity, 0];
  for (const value of thickness) {
    low = Math.min(low, value * 1e9);
    high = Math.max(high, value * 1e9);
  }
  return [low, high];
}

/** The scale of a coat: round numbers around its thickness over the whole glass, or from zero. */
export function colorScaleOf(coat: Coat, fromZero: boolean): ColorScale {
  const [low, high] = thicknessRange_nm(coat);
  const pad = Math.max(0, LEAST_SPAN * high - (high - low)) / 2;
  const domain = fromZero || high === 0 ? [0, high || 1] : [Math.max(0, low - pad), high + pad];
  const scale = scaleLinear(domain, [0, 1]).nice(TICKS);
  const [low_nm = 0, high_nm = 1] = scale.domain();
  return { low_nm, high_nm, ticks_nm: scale.ticks(TICKS) };
}

/** Where a thickness lies on a scale, 0 to 1. */
export function shareOf({ low_nm, high_nm }: ColorScale, thickness_nm: number): number {
  return Math.min(1, Math.max(0, (thickness_nm - low_nm) / (high_nm - low_nm)));
}

const channels = (share: number): number[] => (interpolateCividis(share).match(/\d+/g) ?? []).map(Number);

/** The colours as a texture one texel high: looked up with the thickness, so that numbers are interpolated and not colours. */
export function colorTexture(): DataTexture {
  const data = Uint8Array.from(Array.from({ length: COLORS }, (_, i) => [...channels(i / (COLORS - 1)), 255]).flat());
  const texture = new DataTexture(data, COLORS, 1);
  texture.colorSpace = SRGBColorSpace;
  texture.minFilter = LinearFilter;
  texture.magFilter = LinearFilter;
  texture.needsUpdate = true;
  return texture;
}

/** Texture coordinate of a share: the middle of the first texel at 0, of the last at 1. */
export function texelOf(share: number): number {
  return (share * (COLORS - 1) + 0.5) / COLORS;
}

/** The colours as a CSS gradient, upwards. */
export function colorGradient(): string {
  const stops = Array.from({ length: 33 }, (_, i) => `${interpolateCividis(i / 32)} ${((100 * i) / 32).toFixed(3)}%`);
  return `linear-gradient(to top, ${stops.join(', ')})`;
}
