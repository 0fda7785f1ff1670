/** Go or no-go: each question about the vacuum with its answer, and the sentence over them all. */
import { readiness, type ReadinessTone } from '../../../../engine/vacuum/readiness.ts';
import { scientific } from '../../../format/scientific.ts';
import type { Units } from '../../../state/units.ts';
import type { VacuumState } from '../useVacuum.ts';
import { durationText, pressureText, shareText, vacuumWords } from '../vacuumText.ts';

export interface GoItem {
  readonly question: string;
  readonly answer: string;
  readonly tone: ReadinessTone;
}

export interface GoVerdict {
  readonly level: 'good' | 'caution' | 'bad' | 'waiting';
  readonly sentence: string;
  readonly second: string;
}

/**
 * Vapour that goes astray can thin the film by as much: half the tolerance of the film is good, more than twice is
 * bad. The factors are ours; no outside source.
 */
export function flightTone(straight: number, tolerance: number): ReadinessTone {
  const astray = 1 - straight;
  return astray <= tolerance / 2 ? 'go' : astray <= 2 * tolerance ? 'watch' : 'no-go';
}

const FILM_TONES = { clean: 'go', slight: 'go', doubtful: 'watch' } as const;

function flightItem({ gas, plant }: VacuumState): GoItem {
  const question = 'Does the vapour fly straight?';
  if (!gas) return { question, answer: 'No filament evaporates anything: there is no vapour.', tone: 'watch' };
  const { value, low, high } = gas.survival;
  return {
    question,
    answer: `${shareText(value)} of it meets no molecule on its way to the mirror (${shareText(low)} to ${shareText(high)} by what is known of the collisions); the film may be off by ${shareText(plant.film.tolerance)}.`,
    tone: flightTone(value, plant.film.tolerance),
  };
}

function filmItem({ film, coat }: VacuumState): GoItem {
  const question = 'Does the film stay clean?';
  if (!film)
    return {
      question,
      answer: coat ? 'The mirror has bare places: they take in gas alone.' : 'This follows the first coat.',
      tone: 'watch',
    };
  const { worst, band, duration } = film;
  return {
    question,
    answer: `${scientific(worst, 2)} foreign molecules stick for each aluminium atom at the thinnest place, in a shot of ${durationText(duration)}: ${band.name}. ${band.meaning}`,
    tone: FILM_TONES[band.name],
  };
}

function pumpingItems({ pumping, glow, rise }: VacuumState, units: Units): readonly GoItem[] {
  if (!pumping)
    return [
      {
        question: 'When is it ready?',
        answer: 'The design describes no pumping system yet: begin one under Pump-down.',
        tone: 'watch',
      },
    ];
  const { items } = readiness(
    {
      system: pumping.system,
      curve: pumping.curve,
      glow: glow?.dose,
      ...(rise?.fit && { rise: { ok: true, fit: rise.fit } as const }),
    },
    vacuumWords(units),
  );
  return items;
}

/** All questions that the state of things can answer. */
export function goItems(state: VacuumState, units: Units): readonly GoItem[] {
  return [flightItem(state), filmItem(state), ...pumpingItems(state, units)];
}

const LEVELS = { go: 'good', watch: 'caution', 'no-go': 'bad' } as const;
const OPENINGS = {
  go: 'Good enough to fire',
  watch: 'Good enough with care',
  'no-go': 'Not good enough to fire',
} as const;
const RANK: readonly ReadinessTone[] = ['go', 'watch', 'no-go'];

function readyText({ pumping }: VacuumState, units: Units): string {
  if (!pumping) return 'When it is ready follows from a pumping system, which this design does not describe.';
  const { reachedAt, until } = pumping.curve;
  return reachedAt === null
    ? `The pumps never reach ${pressureText(units, until)}.`
    : `Ready ${durationText(reachedAt)} after pumping begins.`;
}

/** The plain sentence over the stage, from the worst answer. */
export function goVerdict(state: VacuumState, units: Units): GoVerdict {
  const { gas, film, plant, pumping } = state;
  const ready = readyText(state, units);
  if (!gas)
    return {
      level: 'waiting',
      sentence: 'No filament evaporates anything, so there is no vapour to judge the vacuum by.',
      second: ready,
    };
  // what the design leaves open is told, but is no reason against firing
  const judged = pumping ? goItems(state, units) : [flightItem(state), ...(film ? [filmItem(state)] : [])];
  const tone = judged.reduce<ReadinessTone>(
    (worst, item) => (RANK.indexOf(item.tone) > RANK.indexOf(worst) ? item.tone : worst),
    'go',
  );
  const straight = gas.survival.value;
  const only = flightTone(straight, plant.film.tolerance) === 'go' ? '' : 'only ';
  const ratio = film
    ? `${scientific(film.worst, 2)} foreign molecules for each aluminium atom where the film is thinnest: ${film.band.name}. `
    : '';
  return {
    level: LEVELS[tone],
    sentence: `${OPENINGS[tone]}: at ${pressureText(units, plant.vacuum.pressure)}, ${only}${shareText(straight)} of the vapour flies straight.`,
    second: `${ratio}${ready}`,
  };
}
