/** evaluate: predicts the coat of a design file, prints a report and writes tables and a map. */
import { mkdir, writeFile } from 'node:fs/promises';
import { join } from 'node:path';
import { Command, InvalidArgumentError } from 'commander';
import { createEvaluator, DEFAULT_POINTS, type Coat } from '../../engine/index.ts';
import { createNodePool } from '../nodePool.ts';
import { EXIT_BAD_INPUT, EXIT_OK, printProblems, runCommand } from './exitCodes.ts';
import { mapImage } from './mapImage.ts';
import { progressBar } from './progressBar.ts';
import { readDesign } from './readDesign.ts';
import { report } from './report.ts';
import { summary } from './summary.ts';
import { profileTable, thicknessTable, witnessTable } from './tables.ts';

const MIN_POINTS = 500;
const MAX_POINTS = 1_000_000;

interface Options {
  readonly out?: string;
  readonly points: number;
  readonly json?: boolean;
}

function pointCount(text: string): number {
  const value = Number(text);
  if (!Number.isInteger(value) || value < MIN_POINTS || value > MAX_POINTS)
    throw new InvalidArgumentError(`expected a whole number from ${MIN_POINTS} to ${MAX_POINTS}.`);
  return value;
}

async function writeAll(folder: string, coat: Coat): Promise<void> {
  await mkdir(folder, { recursive: true });
  const write = async (name: string, content: string | Uint8Array): Promise<void> =>
    writeFile(join(folder, name), content);
  await write('summary.json', `${JSON.stringify(summary(coat), null, 2)}\n`);
  await write('thickness.csv', thicknessTable(coat));
  await write('radial-profile.csv', profileTable(coat));
  await write('witnesses.csv', witnessTable(coat));
  await write('thickness.png', await mapImage(coat));
}

async function evaluate(path: string, options: Options): Promise<number> {
  const opened = await readDesign(path);
  if (!opened.ok) {
    printProblems(path, opened.problems);
    return EXIT_BAD_INPUT;
  }
  const pool = createNodePool();
  const bar = progressBar();
  try {
    const evaluateOptions = { points: options.points, withArrival: options.out !== undefined };
    const coat = await createEvaluator(pool.transport).evaluate(opened.plant, evaluateOptions, bar.control);
    bar.end();
    if (options.out !== undefined) await writeAll(options.out, coat);
    process.stdout.write(options.json ? `${JSON.stringify(summary(coat), null, 2)}\n` : report(coat));
    return EXIT_OK;
  } finally {
    bar.end();
    pool.dispose();
  }
}

const program = new Command('evaluate')
  .description('Predicts the aluminium coat of a design file.')
  .argument('<file>', 'design file (JSON)')
  .option(
    '--out <folder>',
    'also write summary.json, thickness.csv, radial-profile.csv, witnesses.csv and thickness.png there',
  )
  .option('--points <n>', 'map points before refinement', pointCount, DEFAULT_POINTS)
  .option('--json', 'print the summary as JSON instead of the report')
  .addHelpText('after', '\nExit codes: 0 success, 1 internal failure, 2 bad input (every problem is named).')
  .exitOverride((error) => process.exit(error.exitCode === 0 ? EXIT_OK : EXIT_BAD_INPUT))
  .action(async (path: string, options: Options) => runCommand(async () => evaluate(path, options)));

await program.parseAsync();
