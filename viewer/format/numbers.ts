/** Numbers as the page writes them: the one place where SI becomes text. */
import type { Estimate } from '../../engine/index.ts';

const MINUS = '\u2212';
/** Decimals shown at most: a hundredth of a nanometre, of a percent, of a milligram. */
const MAX_DECIMALS = 2;
/** Decimals of a thickness in nanometres. */
export const THICKNESS_DECIMALS = MAX_DECIMALS;
/** A ratio has no unit to hide its digits in. */
const MAX_RATIO_DECIMALS = 4;

/** A value and its error as text, both with the decimals that the error allows. */
export interface EstimateText {
  readonly value: string;
  /** "± 0.03", or "< 0.01" where the last shown digit is sure */
  readonly error: string;
}

/** A number with fixed decimals and a true minus sign. */
export function fixed(value: number, decimals: number): string {
  const text = value.toFixed(decimals);
  return /^-0(\.0*)?$/.test(text) ? text.slice(1) : text.replace('-', MINUS);
}

/** Decimals that an error leaves meaningful, at most `most`. */
function decimalsOf(error: number, most: number): number {
  if (!(error > 0)) return most;
  return Math.min(most, Math.max(0, -Math.floor(Math.log10(error))));
}

/** Writes an estimate times a factor, such as 1e9 for nanometres. */
export function estimateText({ value, error }: Estimate, factor = 1, mostDecimals = MAX_DECIMALS): EstimateText {
  const scaled = Math.abs(error) * factor;
  const decimals = decimalsOf(scaled, mostDecimals);
  const last = 10 ** -decimals;
  return {
    value: fixed(value * factor, decimals),
    error: scaled < last / 2 ? `< ${last.toFixed(decimals)}` : `± ${fixed(Math.ceil(scaled / last) * last, decimals)}`,
  };
}

export const estimate_percent = (estimate: Estimate): EstimateText => estimateText(estimate, 100);
export const estimateRatio = (estimate: Estimate): EstimateText => estimateText(estimate, 1, MAX_RATIO_DECIMALS);

/** A thickness, "96.31 nm". */
export function nm(metres: number, decimals = MAX_DECIMALS): string {
  return `${fixed(metres * 1e9, decimals)} nm`;
}

/** A length of the plant, "1.250 m". */
export function metres(value: number, decimals = 3): string {
  return `${fixed(value, decimals)} m`;
}

/** An angle, "34.1°". */
export function degrees(radians: number, decimals = 1): string {
  return `${fixed((radians * 180) / Math.PI, decimals)}°`;
}

/** A clock angle from 0° up to 360°. */
export function clockDegrees(radians: number, decimals = 1): string {
  const turn = 2 * Math.PI;
  const text = degrees(((radians % turn) + turn) % turn, decimals);
  return text.startsWith('360') ? degrees(0, decimals) : text;
}

/** A share, "33.2 %". */
export function percent(share: number, decimals = 1): string {
  return `${fixed(100 * share, decimals)} %`;
}

/** A tolerance without needless decimals, "±10 %". */
export function tolerance(share: number): string {
  return `±${Number((100 * share).toPrecision(6))} %`;
}

/** A difference with its sign, "+3.1 %". */
export function signedPercent(share: number, decimals = 1): string {
  const text = percent(share, decimals);
  return text.startsWith(MINUS) ? text : `+${text}`;
}

/** A polar place on the mirror, "r 0.275 m, 325°". */
export function polarPlace(x: number, y: number): string {
  return `r ${metres(Math.hypot(x, y))}, ${clockDegrees(Math.atan2(y, x), 0)}`;
}
