/** Go or no-go: one question, one plain sentence, the numbers behind it. */
import type { GlowDose } from './glow.ts';
import { limitWords, verdictOf, type PumpDownVerdict } from './limits.ts';
import { eventOf, type PumpDownCurve } from './pumpDownCurve.ts';
import type { RateOfRise } from './rateOfRise.ts';
import type { PumpSystem } from './system.ts';
import { MBAR_WORDS, shareWords, timeWords, type VacuumWords } from './words.ts';

export type ReadinessTone = 'go' | 'watch' | 'no-go';

export interface ReadinessItem {
  readonly question: string;
  readonly answer: string;
  readonly tone: ReadinessTone;
  /** SI, by name */
  readonly figures: Readonly<Record<string, number>>;
}

export interface Readiness {
  /** the worst tone of the items */
  readonly tone: ReadinessTone;
  /** "Go: …" or "No-go: …" */
  readonly sentence: string;
  readonly items: readonly ReadinessItem[];
}

export interface ReadinessInputs {
  readonly system: PumpSystem;
  readonly curve: PumpDownCurve;
  readonly glow?: GlowDose | undefined;
  readonly rise?: RateOfRise | undefined;
  /** s that the day allows from the start of pumping to firing; no limit unless given */
  readonly available?: number | undefined;
}

/** A leak of this share of all gas at firing is worth a search. Common practice, no source. */
const LEAK_SHARE = 0.3;

function pressureItem(verdict: PumpDownVerdict): ReadinessItem {
  const { isReached, sentence, floor } = verdict;
  return {
    question: 'Will the tank reach the firing pressure?',
    answer: sentence,
    tone: isReached ? 'go' : 'no-go',
    figures: { floor, ...(verdict.time === null ? {} : { time: verdict.time }) },
  };
}

function timeItem(curve: PumpDownCurve, available: number | undefined): ReadinessItem {
  const crossover = eventOf(curve, 'crossover')?.time;
  const glow = eventOf(curve, 'glow starts')?.time;
  const firing = curve.reachedAt;
  const parts = [
    ...(glow === undefined ? [] : [`glow discharge after ${timeWords(glow)}`]),
    ...(crossover === undefined ? [] : [`crossover after ${timeWords(crossover)}`]),
    firing === null ? 'firing pressure never' : `firing pressure after ${timeWords(firing)}`,
  ];
  const text = parts.join(', ');
  const isLate = available !== undefined && firing !== null && firing > available;
  const budget =
    available === undefined || firing === null
      ? ''
      : isLate
        ? `: later than the ${timeWords(available)} there are`
        : `: within the ${timeWords(available)} there are`;
  return {
    question: 'When is it ready?',
    answer: `${text.charAt(0).toUpperCase()}${text.slice(1)}${budget}.`,
    tone: firing === null ? 'no-go' : isLate ? 'watch' : 'go',
    figures: {
      ...(glow === undefined ? {} : { glow }),
      ...(crossover === undefined ? {} : { crossover }),
      ...(firing === null ? {} : { firing }),
      ...(available === undefined ? {} : { available }),
    },
  };
}

function limitItem({ limit }: PumpDownVerdict, words: VacuumWords): ReadinessItem {
  const text = limitWords(limit, words);
  const leak = limit.loads.find(({ kind }) => kind === 'leak')?.share ?? 0;
  const search = leak > LEAK_SHARE ? ` The leak makes ${shareWords(leak)} of all: search for it first.` : '';
  return {
    question: 'What limits it?',
    answer: `${text.charAt(0).toUpperCase()}${text.slice(1)}.${search}`,
    tone: leak > LEAK_SHARE ? 'watch' : 'go',
    figures: { speed: limit.speed, leakShare: leak, ...(limit.loads[0] ? { flow: limit.loads[0].flow } : {}) },
  };
}

/** Speed that a line must leave of a pump before it is worth a word. Common practice, no source. */
const THROTTLED = 0.4;

function lineItems({ limit }: PumpDownVerdict, words: VacuumWords): ReadinessItem[] {
  return limit.pumps
    .filter(({ rated, effective }) => effective < THROTTLED * rated)
    .map(({ name, rated, effective }) => ({
      question: `Does “${name}” pump as it could?`,
      answer: `Of its ${words.speed(rated)}, ${words.speed(effective)} reach the tank: its line and its speed curve take the rest.`,
      tone: 'watch',
      figures: { rated, effective },
    }));
}

function glowItem({ findings, ions, energy }: GlowDose): ReadinessItem {
  const isBad = findings.some(({ tone }) => tone === 'bad');
  const isOdd = findings.some(({ tone }) => tone !== 'good');
  const dose = `${(ions / 1e4).toExponential(1).replace('e+', 'e')} ions/cm²`;
  const remarks = findings.filter(({ tone }) => tone !== 'good').map(({ text }) => text);
  return {
    question: 'Will the glow discharge clean the glass?',
    answer: [`It gives at most ${dose} and ${(energy / 1e4).toPrecision(2)} J/cm².`, ...remarks].join(' '),
    tone: isBad ? 'no-go' : isOdd ? 'watch' : 'go',
    figures: { ions, energy },
  };
}

function riseItem(rise: RateOfRise): ReadinessItem {
  const question = 'Is the tank tight?';
  if (!rise.ok)
    return { question, answer: rise.faults.map(({ message }) => message).join('; '), tone: 'watch', figures: {} };
  const { verdict, sentence, leak, outgassing } = rise.fit;
  const isTight = verdict === 'outgassing' || verdict === 'no rise';
  return { question, answer: sentence, tone: isTight ? 'go' : 'watch', figures: { leak: leak.best, outgassing } };
}

/** Which phase takes longest: there is where time can be saved. */
function phaseItem(curve: PumpDownCurve): ReadinessItem[] {
  const firing = curve.reachedAt;
  const crossover = eventOf(curve, 'crossover')?.time;
  if (firing === null || crossover === undefined || crossover > firing) return [];
  const glow = (eventOf(curve, 'glow ends')?.time ?? 0) - (eventOf(curve, 'glow starts')?.time ?? 0);
  const phases = { roughing: crossover - glow, 'the glow discharge': glow, 'high vacuum': firing - crossover };
  const [name, time] = Object.entries(phases).reduce((longest, phase) => (phase[1] > longest[1] ? phase : longest));
  return [
    {
      question: 'Which phase takes longest?',
      answer: `${name.charAt(0).toUpperCase()}${name.slice(1)}: ${timeWords(time)} of ${timeWords(firing)}.`,
      tone: 'go',
      figures: { roughing: phases.roughing, glow, highVacuum: phases['high vacuum'] },
    },
  ];
}

const RANK: readonly ReadinessTone[] = ['go', 'watch', 'no-go'];

/** Whether the vacuum is good enough to fire, and when: all questions, and the worst answer on top. */
export function readiness(inputs: ReadinessInputs, words: VacuumWords = MBAR_WORDS): Readiness {
  const { system, curve, glow, rise, available } = inputs;
  const verdict = verdictOf(system, curve, words);
  const items = [
    pressureItem(verdict),
    timeItem(curve, available),
    ...phaseItem(curve),
    limitItem(verdict, words),
    ...lineItems(verdict, words),
    ...(glow ? [glowItem(glow)] : []),
    ...(rise ? [riseItem(rise)] : []),
  ];
  const tone = items.reduce<ReadinessTone>(
    (worst, item) => (RANK.indexOf(item.tone) > RANK.indexOf(worst) ? item.tone : worst),
    'go',
  );
  const lead = { go: 'Go', watch: 'Go, with care', 'no-go': 'No-go' }[tone];
  const worst = items.find((item) => item.tone === tone) ?? items[0]!;
  return { tone, sentence: `${lead}: ${(tone === 'go' ? items[0]! : worst).answer}`, items };
}
