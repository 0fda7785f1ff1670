/** The light that a coat costs, in terms that people weigh: aperture and exposure time. */
import type { Estimate } from '../coat/statistics.ts';
import { anyLength, percent } from './words.ts';

/** One coat against another, along the whole path. */
export interface Comparison {
  /** reflectance of this coat over the other's, one reflection */
  readonly perReflection: Estimate;
  /** the same for all mirrors of the path */
  readonly throughput: Estimate;
  /** diameter of an equally good mirror with the other coat, over this one's */
  readonly diameterRatio: number;
  /** how much smaller across that mirror is, m; negative if this coat is the better one */
  readonly diameterLost: number;
  /** exposure that gathers the same light, over the other's */
  readonly exposureRatio: number;
}

export interface LightLost {
  /** share of the aperture's light that goes on to the image, one reflection: reflected and not scattered */
  readonly reflectance: Estimate;
  /** of an opaque, bare, smooth coat just made */
  readonly perfect: number;
  readonly mirrors: number;
  readonly againstPerfect: Comparison;
  /** null without a measurement of the old coat */
  readonly againstLastYear: Comparison | null;
  readonly sentence: string;
}

/**
 * Compares two reflectances over a number of like mirrors.
 *
 *     throughput = (R/R′)ⁿ,  diameter ratio = √throughput,  exposure ratio = 1/throughput
 *
 * The exposure holds for photon noise of source and sky alike, as both pass the same mirrors.
 *
 * @param diameter [m] of the clear aperture
 */
export function compareCoats(reflectance: Estimate, other: number, mirrors: number, diameter: number): Comparison {
  const ratio = reflectance.value / other;
  const throughput = ratio ** mirrors;
  const relativeError = reflectance.value > 0 ? reflectance.error / reflectance.value : 0;
  const diameterRatio = Math.sqrt(throughput);
  return {
    perReflection: { value: ratio, error: reflectance.error / other },
    throughput: { value: throughput, error: mirrors * throughput * relativeError },
    diameterRatio,
    diameterLost: diameter * (1 - diameterRatio),
    exposureRatio: 1 / throughput,
  };
}

function comparedInWords({ throughput, diameterLost, exposureRatio }: Comparison, other: string): string {
  const lost = 1 - throughput.value;
  if (Math.abs(lost) < 5e-5) return `as much light as ${other}`;
  const [less, smaller, longer] = lost > 0 ? ['less', 'smaller', 'longer'] : ['more', 'larger', 'shorter'];
  return `${percent(Math.abs(lost))} ${less} light than ${other}, as if the mirror were ${anyLength(Math.abs(diameterLost))} ${smaller} across or exposures ${percent(Math.abs(exposureRatio - 1))} ${longer}`;
}

/**
 * What a coat costs in light.
 *
 * @param reflectance aperture-weighted, scatter taken off
 * @param perfect [1] reflectance of a perfect coat under the same light
 * @param lastYear [1] measured reflectance of the old coat, or null
 * @param diameter [m] of the clear aperture
 */
export function lightLost(
  reflectance: Estimate,
  perfect: number,
  lastYear: number | null,
  mirrors: number,
  diameter: number,
): LightLost {
  const againstPerfect = compareCoats(reflectance, perfect, mirrors, diameter);
  const againstLastYear = lastYear === null ? null : compareCoats(reflectance, lastYear, mirrors, diameter);
  const path = mirrors === 1 ? 'One reflection gives' : `${mirrors} reflections give`;
  const first = `${path} ${comparedInWords(againstPerfect, 'a perfect fresh coat')}.`;
  const second = againstLastYear ? ` It gives ${comparedInWords(againstLastYear, "last year's coat")}.` : '';
  return { reflectance, perfect, mirrors, againstPerfect, againstLastYear, sentence: first + second };
}
