/** What a coat costs: the few numbers of the film report that a page for managers shows. */
import type { Coat } from '../coat/coat.ts';
import type { Estimate } from '../coat/statistics.ts';
import { filmProblems, filmReport } from '../film/filmReport.ts';
import { lineLight } from '../film/light.ts';
import { mirrorFilm } from '../film/mirrorFilm.ts';
import { litFilm } from '../film/reflectanceCurve.ts';

export interface Consequence {
  /** the light that reflectances are for */
  readonly light: string;
  /** over the clear aperture, 1 */
  readonly reflectance: Estimate;
  /** at the thinnest place, 1 */
  readonly reflectedAtThinnest: number;
  /** what this film would reflect if it were thick everywhere, 1: the rest of the loss is not its thickness */
  readonly thickCoat: number;
  /** of a perfect fresh coat: thick, smooth and without oxide, 1 */
  readonly perfect: number;
  /** reflections on like mirrors */
  readonly mirrors: number;
  /** share of light lost against a perfect coat over all reflections; negative if gained */
  readonly lightLost: number;
  /** how much smaller across an equally good mirror with a perfect coat is, m */
  readonly diameterLost: number;
  /** how much longer exposures take, 1 */
  readonly exposureLonger: number;
  /** light lost against last year's coat, 1; null if that is not known */
  readonly lostAgainstLastYear: number | null;
  /** thickness from which no lamp shows through in a lit room, m; Infinity if none does */
  readonly opaqueFrom: number;
  /** m */
  readonly wavelength: number;
  /** wavefront, highest minus lowest, m */
  readonly bump: number;
  /** wavefront after aligning and refocusing, rms, m */
  readonly remains: number;
  /** peak of a point's image against a perfect coat's, 1 */
  readonly sharpness: number;
}

/** The consequence of a coat, or why it can't be worked out. */
export type ConsequenceFound = Consequence | { readonly problem: string };

export function consequenceOf(coat: Coat): ConsequenceFound {
  const [problem] = filmProblems(coat.plant.film);
  if (problem) return { problem: `${problem.path}: ${problem.message}` };
  const { light, reflectance, thinnest, opaque, figure, lightLost } = filmReport(coat);
  const { againstPerfect, againstLastYear } = lightLost;
  const design = coat.plant.film;
  return {
    light,
    reflectance,
    reflectedAtThinnest: thinnest.reflected,
    thickCoat: litFilm(mirrorFilm(design), lineLight(design.wavelength), 0).opaqueReflected,
    perfect: lightLost.perfect,
    mirrors: lightLost.mirrors,
    lightLost: 1 - againstPerfect.throughput.value,
    diameterLost: againstPerfect.diameterLost,
    exposureLonger: againstPerfect.exposureRatio - 1,
    lostAgainstLastYear: againstLastYear && 1 - againstLastYear.throughput.value,
    opaqueFrom: opaque[0]?.thickness ?? Infinity,
    wavelength: figure.wavelength,
    bump: figure.asCoated.wavefront.peakToValley.value,
    remains: figure.corrected.wavefront.rms.value,
    sharpness: figure.strehl,
  };
}
