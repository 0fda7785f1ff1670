/** evaluate: predicts the coat of a design file, prints a report and writes tables and a map. */
import { mkdir, writeFile } from 'node:fs/promises';
import { basename, extname, join } from 'node:path';
import { Command, InvalidArgumentError } from 'commander';
import { createEvaluator, DEFAULT_POINTS, type Coat, type Plant } from '../../engine/index.ts';
import { evaporatedMasses } from '../../engine/plant/plant.ts';
import { readPressureSweep } from '../../engine/gas/pressureSweep.ts';
import { createNodePool } from '../nodePool.ts';
import { EXIT_BAD_INPUT, EXIT_OK, printProblems, runCommand } from './exitCodes.ts';
import { mapImage } from './mapImage.ts';
import { pressurePlot } from './pressurePlot.ts';
import { pressureCsv, pressureReport, pressureRows } from './pressureRows.ts';
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
  readonly pressures?: Float64Array;
}

/** Of the atoms that are followed through gas. */
const SEED = 1;

function pressureList(text: string): Float64Array {
  const read = readPressureSweep(text);
  if (!read.ok) throw new InvalidArgumentError(`${read.message}.`);
  const { pressures } = read;
  if (pressures.some((pressure) => pressure > ATMOSPHERE))
    throw new InvalidArgumentError('expected pressures up to that of the atmosphere, 1013.25 mbar.');
  return pressures;
}

/** Pa */
const ATMOSPHERE = 101_325;

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
  if (options.pressures) return sweep(path, opened.plant, options.pressures, options);
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

/** The shot at many pressures: a report, a table and a plot beside it. */
async function sweep(
  path: string,
  plant: Plant,
  pressures: Float64Array,
  { out = '.', points }: Options,
): Promise<number> {
  if (!evaporatedMasses(plant).some((mass) => mass > 0)) {
    printProblems(path, [
      { path: 'filaments', message: 'expected a filament in use with a charge; found none, so nothing evaporates' },
    ]);
    return EXIT_BAD_INPUT;
  }
  const pool = createNodePool();
  const bar = progressBar();
  try {
    const evaluator = createEvaluator(pool.transport, pool.fields);
    const rows = await pressureRows(plant, pressures, { evaluator, fly: pool.fly, points, seed: SEED }, bar.control);
    bar.end();
    const stem = join(out, `${basename(path, extname(path))}-pressures`);
    await mkdir(out, { recursive: true });
    await writeFile(`${stem}.csv`, pressureCsv(rows));
    await writeFile(`${stem}.svg`, pressurePlot(plant, rows));
    process.stdout.write(`${pressureReport(plant, rows, SEED)}\nWritten: ${stem}.csv and ${stem}.svg\n`);
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
  .option(
    '--pressures <from:to:count>',
    'lay the coat through residual gas at many pressures, such as 1e-6mbar:1mbar:13, and write <name>-pressures.csv and .svg to --out or here',
    pressureList,
  )
  .option('--json', 'print the summary as JSON instead of the report')
  .addHelpText('after', '\nExit codes: 0 success, 1 internal failure, 2 bad input (every problem is named).')
  .exitOverride((error) => process.exit(error.exitCode === 0 ? EXIT_OK : EXIT_BAD_INPUT))
  .action(async (path: string, options: Options) => runCommand(async () => evaluate(path, options)));

await program.parseAsync();
