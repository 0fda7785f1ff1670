/** The engine's problems as the text under one field. */
import { formatProblem, type Problem } from '../../engine/index.ts';

/** Null if there are no problems; those of the field itself are said without its path. */
export function refusalText(problems: readonly Problem[], path: string): string | null {
  if (problems.length === 0) return null;
  return problems.map((problem) => (problem.path === path ? problem.message : formatProblem(problem))).join(' ');
}
