/** explain: one page on why a coat is as it is, what it costs and what could be done. */
import { stat, writeFile } from 'node:fs/promises';
import { basename, dirname } from 'node:path';
import { Command } from 'commander';
import { explainCoat } from '../../engine/explain/explainCoat.ts';
import { createEvaluator, type Coat, type OpenedPlant } from '../../engine/index.ts';
import { createNodePool } from '../nodePool.ts';
import { explainPage, facingOf } from '../report/explainPage.ts';
import { EXIT_BAD_INPUT, EXIT_OK, printProblems, runCommand } from './exitCodes.ts';
import { progressBar } from './progressBar.ts';
import { readDesign } from './readDesign.ts';

interface Options {
  readonly against: readonly string[];
  readonly out: string;
  readonly date?: string;
}

type Opened = Extract<OpenedPlant, { ok: true }>;

/** Every design, or null after all problems of all of them are printed. */
async function openAll(paths: readonly string[]): Promise<Opened[] | null> {
  const all = await Promise.all(paths.map(async (path) => ({ path, opened: await readDesign(path) })));
  for (const { path, opened } of all) if (!opened.ok) printProblems(path, opened.problems);
  const sound = all.flatMap(({ opened }) => (opened.ok ? [opened] : []));
  return sound.length === all.length ? sound : null;
}

/** The coats, one after another; the page needs no rays. */
async function coatsOf(designs: readonly Opened[]): Promise<Coat[]> {
  const pool = createNodePool();
  const bar = progressBar();
  try {
    const evaluator = createEvaluator(pool.transport);
    const coats: Coat[] = [];
    for (const { plant } of designs) coats.push(await evaluator.evaluate(plant, { rays: 0 }, bar.control));
    return coats;
  } finally {
    bar.end();
    pool.dispose();
  }
}

/** Whether the page has a folder to go to; prints why not. Asked before the work, not after it. */
async function hasFolder(path: string): Promise<boolean> {
  const folder = await stat(dirname(path)).catch(() => null);
  const isFolder = await stat(path).then(
    (about) => about.isDirectory(),
    () => false,
  );
  if (folder?.isDirectory() === true && !isFolder) return true;
  const reason = isFolder ? 'is a folder' : 'lies in a folder that is not there';
  printProblems(path, [{ path: '--out', message: `the page cannot be written: "${path}" ${reason}` }]);
  return false;
}

async function explain(path: string, { against, out, date }: Options): Promise<number> {
  const paths = [path, ...against];
  const designs = await openAll(paths);
  if (!designs || !(await hasFolder(out))) return EXIT_BAD_INPUT;
  const [coat, ...others] = await coatsOf(designs);
  const names = designs.map(({ plant }) => plant.name);
  const options = others.map((other, i) => {
    const isNamedAlike = names.indexOf(other.plant.name) !== i + 1;
    return { name: isNamedAlike ? `${other.plant.name} (${basename(paths[i + 1]!)})` : other.plant.name, coat: other };
  });
  const explanation = await explainCoat(coat!, { options });
  const page = explainPage(explanation, {
    facing: facingOf(designs[0]!.file),
    ...(date !== undefined && { dateLine: date }),
  });
  await writeFile(out, page);
  process.stdout.write(
    `${explanation.question} ${explanation.answer}\n${out}: one page, ${Buffer.byteLength(page)} bytes.\n`,
  );
  return EXIT_OK;
}

const program = new Command('explain')
  .description('Writes one page that explains the coat of a design file in plain words.')
  .argument('<file>', 'design file (JSON)')
  .requiredOption('--out <page>', 'the page to write (HTML; prints on one sheet of A4 or Letter)')
  .option('--against <files...>', 'other design files to compare with', [])
  .option('--date <text>', 'a date or note for the head of the page')
  .addHelpText('after', '\nExit codes: 0 success, 1 internal failure, 2 bad input (every problem is named).')
  .exitOverride((error) => process.exit(error.exitCode === 0 ? EXIT_OK : EXIT_BAD_INPUT))
  .action(async (path: string, options: Options) => runCommand(async () => explain(path, options)));

await program.parseAsync();
