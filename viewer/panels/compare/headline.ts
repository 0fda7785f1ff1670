/** Two coats compared in plain sentences. */
import { inUnit, verdictOf, type Coat, type Estimate } from '../../../engine/index.ts';
import { fixed, tolerance } from '../../format/numbers.ts';
import type { Units } from '../../state/units.ts';
import { perKilogram, shotMassUnit } from './masses.ts';

export interface Headline {
  /** what B is, beside A */
  readonly sentence: string;
  /** which of the two keeps its tolerance */
  readonly second: string;
}

/** A change that its numerical errors hide. */
function isHidden(a: Estimate, b: Estimate): boolean {
  return Math.abs(b.value - a.value) <= a.error + b.error;
}

/** A size with two digits that matter: "18", "4.2", "0.31"; "0" if it is too small for that. */
function brief(size: number): string {
  return fixed(size, size >= 9.95 ? 0 : size >= 0.995 ? 1 : 2).replace(/^0\.00$/, '0');
}

const isBare = ({ statistics }: Coat): boolean => !(statistics.mean.value > 0);

/** "B is 18 percentage points more even". */
function evenness(a: Coat, b: Coat): { readonly text: string; readonly gain: number } {
  const [before, after] = [a.statistics.uniformity, b.statistics.uniformity];
  const gain = 100 * (before.value - after.value);
  const size = brief(Math.abs(gain));
  if (isHidden(before, after) || size === '0') return { text: 'B is as even as A', gain: 0 };
  const points = size === '1.0' ? '1 percentage point' : `${size} percentage points`;
  return { text: `B is ${points} ${gain > 0 ? 'more' : 'less'} even`, gain };
}

/** "thinnest +21 nm". */
function thinnest(a: Coat, b: Coat, unit: string): { readonly text: string; readonly gain: number } {
  const [before, after] = [a.statistics.minimum, b.statistics.minimum];
  const gain = inUnit(after.value - before.value, 'length', unit);
  const size = brief(Math.abs(gain));
  if (isHidden(before, after) || size === '0') return { text: 'thinnest unchanged', gain: 0 };
  return { text: `thinnest ${gain > 0 ? '+' : '\u2212'}${size} ${unit}`, gain };
}

/** "at the cost of 3.3 g more aluminium": a cost only where something was gained. */
function aluminium(a: Coat, b: Coat, units: Units, hasGain: boolean): string {
  const more = (b.budget.evaporated - a.budget.evaporated) * perKilogram(units);
  const size = brief(Math.abs(more));
  if (size === '0') return 'with the same aluminium';
  const text = `${size} ${shotMassUnit(units)} ${more > 0 ? 'more' : 'less'} aluminium`;
  return more > 0 && hasGain ? `at the cost of ${text}` : `with ${text}`;
}

const keeps = (coat: Coat): boolean => verdictOf(coat).level === 'even';

function toleranceSentence(a: Coat, b: Coat): string {
  const [first, second] = [a, b].map(({ plant }) => tolerance(plant.film.tolerance));
  const isShared = first === second;
  if (keeps(a) && keeps(b))
    return isShared ? `Both keep within ${first}.` : `Both keep within their tolerance, A ${first} and B ${second}.`;
  if (keeps(b))
    return isShared
      ? `B keeps within ${second}, A does not.`
      : `B keeps within its ${second}, A does not within its ${first}.`;
  if (keeps(a))
    return isShared
      ? `A keeps within ${first}, B does not.`
      : `A keeps within its ${first}, B does not within its ${second}.`;
  return isShared
    ? `Neither keeps within ${first}.`
    : `Neither keeps within its tolerance, A ${first} and B ${second}.`;
}

/** What a change from A to B brings, and what it costs. */
export function headlineOf(a: Coat, b: Coat, units: Units): Headline {
  if (isBare(a) && isBare(b)) return { sentence: 'Both leave the mirror bare.', second: '' };
  if (isBare(a)) return { sentence: 'B coats the mirror; A leaves it bare.', second: '' };
  if (isBare(b)) return { sentence: 'B leaves the mirror bare; A coats it.', second: '' };
  const even = evenness(a, b);
  const thin = thinnest(a, b, units.thickness);
  const cost = aluminium(a, b, units, even.gain > 0 || (even.gain === 0 && thin.gain > 0));
  return { sentence: `${even.text}; ${thin.text}, ${cost}.`, second: toleranceSentence(a, b) };
}
