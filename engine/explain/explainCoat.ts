/** The door of this folder: from a coat to everything that one page says about it. */
import type { Coat } from '../coat/coat.ts';
import { verdictOf } from '../coat/verdict.ts';
import { perFreePath } from '../gas/freePath.ts';
import { plantGas } from '../gas/scatterProblem.ts';
import { buildScene } from '../transport/buildScene.ts';
import { sceneDataOf } from '../transport/plantRequests.ts';
import { caseOf, isEven, type CaseFound, type CoatCase } from './coatCase.ts';
import { consequenceOf, type ConsequenceFound } from './consequence.ts';
import { costStatements } from './costStory.ts';
import { decompose, type Decomposition } from './decompose.ts';
import { optionEffects, optionStatements, type OptionEffect } from './optionStory.ts';
import { sightLinesOf, type SightLines } from './sightLines.ts';
import { thicknessOf, type Findings, type Option, type Statement } from './story.ts';
import { sureStatements } from './sureStory.ts';
import { FACTOR_NAMES, idleStatements, rankedFactors, whyStatements } from './whyStory.ts';
import { effect, listed, mass, share, thick } from './words.ts';

export interface ExplainOptions {
  /** coats to compare with */
  readonly options?: readonly Option[];
  /** mean way of the vapour between collisions with gas, m; that in the plant's own vacuum unless given */
  readonly freePath?: number;
  /** whether the coats were worked out with that free path; else gas is told of, but kept out of the shares */
  readonly hasGas?: boolean;
}

export interface Explanation {
  readonly coat: Coat;
  readonly found: CaseFound;
  readonly question: string;
  /** one sentence */
  readonly answer: string;
  /** null if the mirror stays bare */
  readonly decomposition: Decomposition | null;
  readonly sight: SightLines;
  /** whether gas is among the factors of the decomposition */
  readonly hasGas: boolean;
  readonly consequence: ConsequenceFound;
  readonly why: readonly Statement[];
  readonly cost: readonly Statement[];
  /** the coat itself, then each option */
  readonly effects: readonly OptionEffect[];
  readonly options: readonly Statement[];
  readonly sure: readonly Statement[];
}

const QUESTIONS: Readonly<Record<CoatCase, string>> = {
  bare: 'Why does the mirror stay bare?',
  even: 'Is this coat even enough?',
  'thin all over': 'Why is the whole coat thin?',
  'thick all over': 'Why is the whole coat thick?',
  'thin edge': 'Why is the edge thin?',
  'thin middle': 'Why is the middle thin?',
  'thin zone': 'Why is there a thin zone?',
  'thin patch': 'Why is there a thin patch?',
  'thin side': 'Why is one place thin?',
  'thick edge': 'Why is the edge thick?',
  'thick middle': 'Why is the middle thick?',
  'thick zone': 'Why is there a thick zone?',
  'thick patch': 'Why is there a thick patch?',
};

/** Factors below this share of the whole difference are not named in the answer. */
const NAMED = 0.15;
const MOST_NAMED = 3;

/** An even coat that misses its target, and what decides its average. */
function offTarget({ statistics: { mean, collection }, plant: { film }, budget }: Coat): string {
  const off = mean.value / film.target - 1;
  return `The coat is even, but its average of ${thick(mean.value)} is ${share(off)} ${off < 0 ? 'under' : 'over'} the ${thick(film.target)} that was ordered: the filaments evaporate ${mass(budget.evaporated)}, of which the mirror catches ${share(collection.value)}.`;
}

/** The factors that make most of a difference, and those that work against it. */
function causesOf(decomposition: Decomposition, change: number): string {
  const parts = rankedFactors(decomposition);
  const told = (sign: 1 | -1): string[] =>
    parts
      .filter((part) => (sign * part.share) / change >= NAMED)
      .slice(0, MOST_NAMED)
      .map((part) => `${FACTOR_NAMES[part.factor]} ${effect(part.share)}`);
  const [causes, against] = [told(1), told(-1)];
  return `${causes.length > 0 ? `: ${listed(causes)}` : ''}${against.length > 0 ? `, while ${listed(against)}` : ''}`;
}

function answerOf(findings: Omit<Findings, 'consequence' | 'options' | 'gas'>): string {
  const { coat, found, decomposition } = findings;
  const verdict = verdictOf(coat);
  if (!decomposition) return verdict.sentence;
  if (found.kind === 'even') return `Yes. ${verdict.sentence}`;
  if (isEven(found.kind)) return offTarget(coat);
  const { difference, from, to } = decomposition;
  const change = difference / from.deposit;
  const [here, there] = [to, from].map(({ deposit }) => thick(thicknessOf(coat, deposit)));
  const what = `The coat is ${here} thick ${found.to.where}, ${share(change)} ${change < 0 ? 'less' : 'more'} than ${found.from.where} (${there})`;
  const [idle] = found.kind === 'thin side' ? idleStatements(findings) : [];
  if (idle && (idle.figures['added'] ?? 0) >= thicknessOf(coat, -difference) / 2) return `${what}. ${idle.claim}`;
  return `${what}${causesOf(decomposition, change)}.`;
}

/** Mean way of an atom between collisions in the residual gas of a coat's plant, m. */
const freePathIn = ({ plant }: Coat): number => 1 / perFreePath(plantGas(plant));

/** Explains a coat. */
export async function explainCoat(
  coat: Coat,
  { options = [], freePath = freePathIn(coat), hasGas = false }: ExplainOptions = {},
): Promise<Explanation> {
  const scene = await buildScene(sceneDataOf(coat.plant));
  const found = caseOf(coat);
  const inCoat = hasGas ? freePath : Infinity;
  const decomposition =
    found.kind === 'bare' ? null : decompose(coat.plant, scene, found.from.points, found.to.points, inCoat);
  const consequence = consequenceOf(coat);
  const findings: Findings = { coat, scene, found, decomposition, consequence, options, gas: { freePath, inCoat } };
  const effects = optionEffects(findings);
  return {
    coat,
    found,
    question: QUESTIONS[found.kind],
    answer: answerOf(findings),
    decomposition,
    sight: sightLinesOf(coat.plant, scene, found, decomposition),
    hasGas: inCoat !== Infinity,
    consequence,
    why: whyStatements(findings),
    cost: costStatements(findings),
    effects,
    options: optionStatements(findings, effects),
    sure: sureStatements(findings),
  };
}
