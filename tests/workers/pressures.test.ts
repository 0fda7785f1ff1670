import { execFile } from 'node:child_process';
import { mkdtemp, readFile, rm } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { promisify } from 'node:util';
import { csvParse } from 'd3-dsv';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { scatter } from '../../engine/gas/scatter.ts';
import { scatterProblemOf } from '../../engine/gas/scatterProblem.ts';
import { presets } from '../../presets/index.ts';
import { createNodePool } from '../../workers/nodePool.ts';
import { plantOf } from '../support/plants.ts';

const ROOT = fileURLToPath(new URL('../..', import.meta.url));
const FILE = join(ROOT, 'presets/teaching-tank.json');
const run = async (...args: string[]) =>
  promisify(execFile)(process.execPath, ['--import', 'tsx', 'workers/cli/evaluate.ts', FILE, ...args], { cwd: ROOT });

let folder: string;
beforeAll(async () => {
  folder = await mkdtemp(join(tmpdir(), 'pressures-'));
});
afterAll(async () => rm(folder, { recursive: true }));

test('a sweep writes a table whose shares add up, and a plot', { timeout: 120_000 }, async () => {
  const { stdout } = await run('--pressures', '1e-6mbar:1e-3mbar:3', '--points', '600', '--out', folder);
  expect(stdout).toContain('Written:');
  const rows = csvParse(await readFile(join(folder, 'teaching-tank-pressures.csv'), 'utf8'));
  expect(rows.map(({ pressure_mbar }) => Number(pressure_mbar))).toEqual([1e-6, 3.16228e-5, 1e-3]);
  for (const row of rows) {
    const sum = ['straight_percent', 'scattered_percent', 'lost_percent'].reduce(
      (all, key) => all + Number(row[key]),
      0,
    );
    expect(sum).toBeCloseTo(100, 3); // six digits are written
  }
  // thinner and thinner by straight flight alone
  const straight = rows.map(({ straight_percent }) => Number(straight_percent));
  expect(straight).toEqual(straight.toSorted((p, q) => q - p));
  expect(await readFile(join(folder, 'teaching-tank-pressures.svg'), 'utf8')).toContain('pressure, mbar');
});

describe('refuses with code 2 and a sentence', () => {
  test.each([
    ['zero', '0mbar:1mbar:13', 'above zero'],
    ['a negative one', '-1mbar:1mbar:13', 'above zero'],
    ['one above the atmosphere', '1mbar:2000mbar:3', 'atmosphere'],
    ['a bare number', '1:2:3', 'unit'],
    ['no count', '1e-6mbar:1mbar', 'how many'],
  ])('a pressure list with %s', async (_, list, words) => {
    const failure = (await run(`--pressures=${list}`).catch((error: unknown) => error)) as {
      code: number;
      stderr: string;
    };
    expect(failure.code).toBe(2);
    expect(failure.stderr).toContain(words);
  });
});

test(
  'atoms flown by one, two or four workers end in the same places, to the last one',
  { timeout: 60_000 },
  async () => {
    const problem = scatterProblemOf(plantOf(presets[0]!.file), { seed: 7 });
    const options = { maxAtoms: 30_000, wantedError: 1e-3 };
    const alone = await scatter(problem, options);
    for (const size of [1, 2, 4]) {
      const pool = createNodePool(size);
      const shared = await scatter(problem, { ...options, run: pool.fly });
      pool.dispose();
      expect(shared.tally).toEqual(alone.tally);
    }
  },
);
