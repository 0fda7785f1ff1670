/** What the commands exit with. */
import { formatProblem, type Problem } from '../../engine/index.ts';

export const EXIT_OK = 0;
const EXIT_INTERNAL = 1;
export const EXIT_BAD_INPUT = 2;

/** Prints every problem, one a line, under a heading. */
export function printProblems(path: string, problems: readonly Problem[]): void {
  const count = problems.length === 1 ? '1 problem' : `${problems.length} problems`;
  process.stderr.write(`${path}: ${count}\n${problems.map((problem) => `  ${formatProblem(problem)}\n`).join('')}`);
}

/** Runs a command and sets the exit code; an unexpected error becomes a sentence and code 1. */
export async function runCommand(command: () => Promise<number>): Promise<void> {
  try {
    process.exitCode = await command();
  } catch (error) {
    process.stderr.write(
      `internal failure: ${error instanceof Error ? (error.stack ?? error.message) : String(error)}\n`,
    );
    process.exitCode = EXIT_INTERNAL;
  }
}
