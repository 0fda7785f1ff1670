/** Statements: what an explanation says, each with the numbers that it rests on. */
import type { Coat } from '../coat/coat.ts';
import type { Scene } from '../geometry/scene.ts';
import type { CaseFound } from './coatCase.ts';
import type { ConsequenceFound } from './consequence.ts';
import type { Decomposition } from './decompose.ts';

/** `good` and `bad` judge, `watch` warns, `plain` only tells. */
export type Tone = 'good' | 'watch' | 'bad' | 'plain';

export interface Statement {
  /** the point in a few words: "Distance", "Light lost" */
  readonly topic: string;
  /** one to three short sentences */
  readonly claim: string;
  /** the numbers behind the claim by name, SI */
  readonly figures: Readonly<Record<string, number>>;
  readonly tone: Tone;
}

/** A coat to compare with: a variant, last year's layout, a proposal. */
export interface Option {
  readonly name: string;
  readonly coat: Coat;
}

/** Mean ways of the vapour between collisions, m. */
export interface Gas {
  /** in the tank; Infinity in a perfect vacuum */
  readonly freePath: number;
  /** that the coat was worked out with; Infinity without gas */
  readonly inCoat: number;
}

/** What the statements are made from. */
export interface Findings {
  readonly coat: Coat;
  readonly scene: Scene;
  readonly found: CaseFound;
  /** null if the mirror stays bare */
  readonly decomposition: Decomposition | null;
  readonly consequence: ConsequenceFound;
  readonly options: readonly Option[];
  readonly gas: Gas;
}

/** Thickness of a deposit, m. */
export function thicknessOf({ plant: { film } }: Coat, deposit: number): number {
  return (deposit * film.sticking) / film.density;
}
