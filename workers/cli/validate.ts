/** validate: checks a design file and names every problem in it. */
import { Command } from 'commander';
import { EXIT_BAD_INPUT, EXIT_OK, printProblems, runCommand } from './exitCodes.ts';
import { readDesign } from './readDesign.ts';

function counted(count: number, one: string, many = `${one}s`): string {
  return `${count} ${count === 1 ? one : many}`;
}

async function validate(path: string): Promise<number> {
  const opened = await readDesign(path);
  if (!opened.ok) {
    printProblems(path, opened.problems);
    return EXIT_BAD_INPUT;
  }
  const { plant } = opened;
  const parts = [
    counted(plant.filaments.length, 'filament'),
    counted(plant.obstacleNames.length, 'obstacle'),
    counted(plant.witnesses.length, 'witness', 'witnesses'),
  ];
  process.stdout.write(`${path}: sound. "${plant.name}": ${parts.join(', ')}.
`);
  return EXIT_OK;
}

const program = new Command('validate')
  .description('Checks a design file.')
  .argument('<file>', 'design file (JSON)')
  .addHelpText('after', '\nExit codes: 0 sound, 1 internal failure, 2 bad input (every problem is named).')
  .exitOverride((error) => process.exit(error.exitCode === 0 ? EXIT_OK : EXIT_BAD_INPUT))
  .action(async (path: string) => runCommand(async () => validate(path)));

await program.parseAsync();
