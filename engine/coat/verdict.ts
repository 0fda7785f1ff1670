/** The coat in one plain sentence. */
import type { Coat } from './coat.ts';
import type { RadialProfile } from './radialProfile.ts';

/** `even`: all within the tolerance of the mean; `uneven`: some place is not; `bare`: nothing arrives. */
export type VerdictLevel = 'even' | 'uneven' | 'bare';

export interface Verdict {
  readonly level: VerdictLevel;
  /** what matters most, first */
  readonly sentence: string;
  /** how the mean compares with the target */
  readonly second: string;
}

/** Share of the radius within which a place counts as the centre, and beyond which as the edge. */
const CENTRE = 0.1;
const EDGE = 0.9;
/** Spread over azimuth, as a share of the mean, that counts as none. */
const SAME = 0.005;

const nm = (metres: number): string => {
  const value = metres * 1e9;
  return value.toFixed(value >= 9.95 ? 0 : value >= 0.995 ? 1 : 2);
};
const percent = (share: number): string =>
  `${Math.abs(100 * share) < 9.95 ? Math.abs(100 * share).toFixed(1) : Math.abs(100 * share).toFixed(0)} %`;

/** A place on the mirror in words: "at the outer edge", "in the middle", "at radius 0.85 m, 120°". */
function placeInWords({ plant, profile }: Coat, [x, y]: readonly [number, number, number]): string {
  const { shape } = plant;
  const r = Math.hypot(x - shape.centerX, y);
  const inner = shape.clearInnerRadius;
  const reach = (r - inner) / (shape.clearOuterRadius - inner);
  if (reach > EDGE) return 'at the outer edge';
  if (reach < CENTRE) return inner > 0 ? 'at the edge of the hole' : 'in the middle';
  if (isSameAllAround(profile, r)) return `at radius ${r.toPrecision(2)} m, all around`;
  const angle = Math.round((Math.atan2(y, x - shape.centerX) * 180) / Math.PI + 360) % 360;
  return `at radius ${r.toPrecision(2)} m, ${angle}°`;
}

/** Whether the thickness at a radius hardly changes with azimuth, so that naming an angle would mislead. */
function isSameAllAround({ radius, mean, minimum, maximum }: RadialProfile, r: number): boolean {
  const p = Math.max(
    0,
    radius.findIndex((value) => value >= r * (1 - 1e-9)),
  );
  return maximum[p]! - minimum[p]! < SAME * mean[p]!;
}

/** What a coating lead wants to hear first. */
export function verdictOf(coat: Coat): Verdict {
  const { mean, minimum, maximum } = coat.statistics;
  const { target, tolerance } = coat.plant.film;
  if (!(mean.value > 0)) {
    const reason = coat.budget.evaporated > 0 ? 'no vapour reaches the mirror' : 'no filament carries a charge';
    return { level: 'bare', sentence: `The mirror stays bare: ${reason}.`, second: `The target is ${nm(target)} nm.` };
  }
  const thin = 1 - minimum.value / mean.value;
  const thick = maximum.value / mean.value - 1;
  const band = `±${percent(tolerance)}`.replace('.0 %', ' %');
  const off = mean.value / target - 1;
  const compared = Math.abs(off) < 0.005 ? 'on' : `${percent(off)} ${off < 0 ? 'under' : 'over'}`;
  const second = `Average ${nm(mean.value)} nm, ${compared} the ${nm(target)} nm target; ${percent(coat.statistics.fractionInside.value)} of the area is within ${band} of the average.`;
  const thinnest = `Thinnest ${nm(minimum.value)} nm, ${placeInWords(coat, minimum.position)}: ${percent(thin)} below the average`;
  if (thin <= tolerance && thick <= tolerance)
    return { level: 'even', sentence: `${thinnest}, within your ${band}.`, second };
  if (thin > tolerance) return { level: 'uneven', sentence: `${thinnest}, outside your ${band}.`, second };
  const thickest = `Thickest ${nm(maximum.value)} nm, ${placeInWords(coat, maximum.position)}: ${percent(thick)} above the average`;
  return { level: 'uneven', sentence: `${thickest}, outside your ${band}.`, second };
}
