/** What could be done: compared coats side by side, and what more aluminium alone would do. */
import type { Coat } from '../coat/coat.ts';
import { consequenceOf, type ConsequenceFound } from './consequence.ts';
import type { Findings, Statement } from './story.ts';
import { filaments, mass, share, signed, thick } from './words.ts';

/** One line of the comparison. */
export interface OptionEffect {
  readonly name: string;
  /** m */
  readonly mean: number;
  readonly thinnest: number;
  /** of the thinnest place against the coat explained, 1 */
  readonly change: number;
  /** (max − min)/(max + min), 1 */
  readonly uniformity: number;
  /** share of the area within the explained coat's tolerance, 1; null where the option was judged by another */
  readonly inside: number | null;
  /** 1, or null if it can't be worked out */
  readonly reflectance: number | null;
  /** kg in the shot */
  readonly evaporated: number;
  readonly filaments: number;
}

/** Uniformities, thicknesses and masses that differ by less than this share count as the same. */
const SAME = 0.01;

const reflectanceOf = (found: ConsequenceFound): number | null => ('problem' in found ? null : found.reflectance.value);

function effectOf(name: string, coat: Coat, base: Coat, consequence: ConsequenceFound): OptionEffect {
  const { mean, minimum, uniformity, fractionInside } = coat.statistics;
  return {
    name,
    mean: mean.value,
    thinnest: minimum.value,
    change: minimum.value / base.statistics.minimum.value - 1,
    uniformity: uniformity.value,
    inside: coat.plant.film.tolerance === base.plant.film.tolerance ? fractionInside.value : null,
    reflectance: reflectanceOf(consequence),
    evaporated: coat.budget.evaporated,
    filaments: coat.plant.filaments.filter(({ outOfUse, charge }) => !outOfUse && charge > 0).length,
  };
}

/** The coat explained, then each option. */
export function optionEffects({ coat, consequence, options }: Findings): OptionEffect[] {
  return [
    effectOf(coat.plant.name, coat, coat, consequence),
    ...options.map((option) => effectOf(option.name, option.coat, coat, consequenceOf(option.coat))),
  ];
}

function compared(base: OptionEffect, option: OptionEffect): Statement {
  const lift = Number.isFinite(option.change) ? ` (${signed(option.change)})` : '';
  const evenness = option.uniformity / base.uniformity - 1;
  const evenWord = Math.abs(evenness) < SAME ? 'keeps' : evenness < 0 ? 'tightens' : 'widens';
  const aluminium = option.evaporated / base.evaporated - 1;
  const massText =
    Math.abs(aluminium) < SAME
      ? `the same ${mass(option.evaporated)} of aluminium`
      : `${mass(option.evaporated)} of aluminium instead of ${mass(base.evaporated)}`;
  return {
    topic: option.name,
    claim: `The thinnest place would have ${thick(option.thinnest)} instead of ${thick(base.thinnest)}${lift}; it ${evenWord} the spread from ±${share(base.uniformity)} to ±${share(option.uniformity)} and takes ${massText} on ${filaments(option.filaments)}.`,
    figures: {
      thinnest: option.thinnest,
      change: option.change,
      uniformity: option.uniformity,
      evaporated: option.evaporated,
      filaments: option.filaments,
    },
    tone:
      evenness < -SAME && option.thinnest >= base.thinnest * (1 - SAME) ? 'good' : evenness > SAME ? 'bad' : 'plain',
  };
}

/** More or less aluminium everywhere: exact, since a coat is proportional to its charges. */
function scaledStatement({ coat, found }: Findings): Statement[] {
  const { mean, minimum, maximum, uniformity } = coat.statistics;
  const { target, tolerance } = coat.plant.film;
  if (!(minimum.value > 0)) return [];
  const { evaporated } = coat.budget;
  const asWhole = found.kind.endsWith('all over');
  if (!asWhole && minimum.value >= target * (1 - tolerance)) return [];
  const factor = asWhole ? target / mean.value : (target * (1 - tolerance)) / minimum.value;
  const masses = `${mass(factor * evaporated)} instead of ${mass(evaporated)}`;
  const claim = asWhole
    ? `${signed(factor - 1)} on every filament would bring the average to ${thick(target)} and the thinnest place to ${thick(factor * minimum.value)}; the shot takes ${masses}.`
    : `${signed(factor - 1)} on every filament would lift the thinnest place to ${thick(factor * minimum.value)}, but the thickest to ${thick(factor * maximum.value)}: the spread stays ±${share(uniformity.value)}, and the shot takes ${masses}.`;
  return [
    {
      topic: factor > 1 ? 'Only hang more aluminium' : 'Hang less aluminium',
      claim,
      figures: {
        factor,
        thinnest: factor * minimum.value,
        thickest: factor * maximum.value,
        mean: factor * mean.value,
      },
      tone: asWhole ? 'good' : 'plain',
    },
  ];
}

/** The options in sentences, those asked for first. */
export function optionStatements(findings: Findings, [base, ...others]: readonly OptionEffect[]): Statement[] {
  if (!base) return [];
  return [...others.map((option) => compared(base, option)), ...scaledStatement(findings)];
}
