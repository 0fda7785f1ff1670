/** Quality of the film: how its vapour arrived, what it took in, and how much it scatters. */
import { contaminationBand, type ContaminationBand } from '../gas/contamination.ts';
import type { Coat } from '../coat/coat.ts';
import { apertureOf } from './aperture.ts';
import { columnTilt, filmGrade, POROUS, WATCH } from './obliqueFilm.ts';
import { percent } from './words.ts';

export interface ArrivalQuality {
  /** mean angle of arrival, by area, rad */
  readonly meanAngle: number;
  /** share of all that is deposited in the clear aperture that arrives beyond 60°, 1 */
  readonly grazingShare: number;
  /** steepest mean angle, rad, where it is, m, and how far columns lean there by the tangent rule, rad */
  readonly worstAngle: number;
  readonly worstPosition: readonly [number, number, number];
  readonly worstTilt: number;
  /** [points] DENSE, WATCH or POROUS */
  readonly grade: Uint8Array;
  /** share of the clear aperture's area that needs watching, and that is expected to be porous, 1 */
  readonly watchShare: number;
  readonly porousShare: number;
}

/** What the Vacuum stage says of the shot. */
export interface Contamination {
  /** residual-gas molecules that stick for each aluminium atom that arrives, 1 */
  readonly arrivalRatio: number;
}

export interface ContaminationQuality {
  readonly arrivalRatio: number;
  readonly grade: ContaminationBand['name'];
  /** bound on the loss of visible reflectance, 1; null where no published value reaches */
  readonly visibleLoss: number | null;
}

export interface Quality {
  /** null if the coat carries no arrival angles */
  readonly arrival: ArrivalQuality | null;
  /** null if the Vacuum stage was not asked */
  readonly contamination: ContaminationQuality | null;
  /** share of the reflected light that roughness scatters, 1 */
  readonly scatter: number;
  /** m rms */
  readonly roughness: number;
  readonly sentence: string;
}

/** Loss per arrival ratio: an assumption of ours that makes half a percent of the end of the band "slight". */
const LOSS_PER_RATIO = 0.1;

/**
 * Grades the gas that a film took in while it grew.
 *
 * @see G. Hass, Physics of Thin Films 2 (1964), from memory: little visible loss in good vacuum and fast
 * evaporation, ultraviolet falls first; no published R(p, rate), so the slope is an assumption
 */
export function contaminationQuality({ arrivalRatio }: Contamination): ContaminationQuality {
  const { name: grade } = contaminationBand(arrivalRatio);
  return { arrivalRatio, grade, visibleLoss: grade === 'doubtful' ? null : LOSS_PER_RATIO * arrivalRatio };
}

/** How the vapour arrived over the clear aperture; null if the coat was worked out without arrival angles. */
export function arrivalQuality({ face, thickness, arrival }: Coat): ArrivalQuality | null {
  if (!arrival) return null;
  const { fine, nodes } = apertureOf(face);
  const grade = new Uint8Array(thickness.length);
  for (let i = 0; i < grade.length; i++) grade[i] = filmGrade(arrival.meanAngle[i]!, arrival.grazingShare[i]!);
  let [area, angle, deposit, grazing, watch, porous] = [0, 0, 0, 0, 0, 0];
  let worst = -1;
  for (const node of nodes) {
    const mean = arrival.meanAngle[node]!;
    if (Number.isNaN(mean)) continue; // nothing arrives there
    const weight = fine[node]!;
    area += weight;
    angle += weight * mean;
    deposit += weight * thickness[node]!;
    grazing += weight * thickness[node]! * arrival.grazingShare[node]!;
    if (grade[node] === WATCH) watch += weight;
    if (grade[node] === POROUS) porous += weight;
    if (worst < 0 || mean > arrival.meanAngle[worst]!) worst = node;
  }
  if (worst < 0) return null;
  const at = face.points.position;
  const worstAngle = arrival.meanAngle[worst]!;
  return {
    meanAngle: angle / area,
    grazingShare: deposit > 0 ? grazing / deposit : 0,
    worstAngle,
    worstPosition: [at[3 * worst]!, at[3 * worst + 1]!, at[3 * worst + 2]!],
    worstTilt: columnTilt(worstAngle),
    grade,
    watchShare: watch / area,
    porousShare: porous / area,
  };
}

const degrees = (angle: number): string => `${((angle * 180) / Math.PI).toFixed(0)}°`;

function arrivalInWords(arrival: ArrivalQuality | null): string {
  if (!arrival) return 'Arrival angles were not worked out';
  const { meanAngle, worstAngle, porousShare, watchShare } = arrival;
  const angles = `Vapour arrives at ${degrees(meanAngle)} on average, at worst ${degrees(worstAngle)}`;
  if (porousShare > 0) return `${angles}: expect a porous, scattering film on ${percent(porousShare)} of the area`;
  if (watchShare > 0)
    return `${angles}: watch the ultraviolet reflectance of ${percent(watchShare)} of the area, beyond 45°`;
  return `${angles}: a dense film everywhere`;
}

/** Puts the parts of a film's quality together; `scatter` from totalScatter over the light in use. */
export function qualityOf(
  coat: Coat,
  contamination: Contamination | null,
  roughness: number,
  scatter: number,
): Quality {
  const arrival = arrivalQuality(coat);
  const gas = contamination && contaminationQuality(contamination);
  const vacuum = {
    clean: '; the vacuum leaves it clean',
    slight: '; it takes in a little gas',
    doubtful: '; it takes in so much gas that its reflectance is in doubt',
  };
  const sentence = `${arrivalInWords(arrival)}${gas ? vacuum[gas.grade] : ''}; roughness scatters ${percent(scatter)} of the light.`;
  return { arrival, contamination: gas, scatter, roughness, sentence };
}
