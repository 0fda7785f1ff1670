import { execFile } from 'node:child_process';
import { mkdtempSync, readFileSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { PNG } from 'pngjs';
import { afterAll, describe, expect, test } from 'vitest';
import { writeBrokenFiles } from '../engine/design/brokenFiles.ts';

const ROOT = fileURLToPath(new URL('../..', import.meta.url));
const PRESET = 'presets/tarn-hill-as-wired.json';
/** Kills a command that hangs; a broken file is answered in a small part of it. */
const HANGS = 60_000;
const folder = mkdtempSync(join(tmpdir(), 'evenfall-'));
afterAll(() => rmSync(folder, { recursive: true }));

interface Outcome {
  readonly code: number | null;
  readonly stdout: string;
  readonly stderr: string;
}

async function run(command: string, ...args: string[]): Promise<Outcome> {
  return new Promise((resolve) => {
    const child = execFile(
      process.execPath,
      ['--import', 'tsx', `workers/cli/${command}.ts`, ...args],
      { cwd: ROOT, timeout: HANGS, maxBuffer: 2 ** 26 },
      (_error, stdout, stderr) => resolve({ code: child.exitCode, stdout, stderr }),
    );
  });
}

function table(text: string): { readonly heading: string[]; readonly rows: string[][] } {
  const [heading = [], ...rows] = text
    .trim()
    .split('\n')
    .map((line) => line.split(','));
  return { heading, rows };
}

describe('evaluate', () => {
  test('prints the verdict first, then statistics, budget and witnesses', async () => {
    const { code, stdout, stderr } = await run('evaluate', PRESET, '--points', '4000');
    expect(code).toBe(0);
    expect(stderr).toBe('');
    const [name, , sentence] = stdout.split('\n');
    expect(name).toBe('Tarn Hill 2.6 m, as wired');
    expect(sentence).toMatch(/^Thinnest \d+ nm, .*: \d+ % below the average, outside your ±10 %\.$/);
    for (const part of [
      'mean thickness',
      'thinnest',
      'uniformity',
      'RMS',
      'edge ratio',
      'Mass budget',
      'tank walls',
      'closes to',
      'Witnesses',
    ])
      expect(stdout).toContain(part);
  });

  test('writes a summary, tables and a map that agree with one another', async () => {
    const out = join(folder, 'out');
    const { code, stdout } = await run('evaluate', PRESET, '--points', '4000', '--json', '--out', out);
    expect(code).toBe(0);
    const summary = JSON.parse(readFileSync(join(out, 'summary.json'), 'utf8')) as {
      points: number;
      statistics: Record<string, number>;
      witnesses: { name: string; thickness_m: number }[];
    };
    expect(JSON.parse(stdout)).toEqual(summary);
    const map = table(readFileSync(join(out, 'thickness.csv'), 'utf8'));
    expect(map.heading).toEqual(['x_m', 'y_m', 'z_m', 'thickness_nm', 'mean_incidence_deg']);
    expect(map.rows).toHaveLength(summary.points);
    const thickness = map.rows.map((row) => Number(row[3]) * 1e-9);
    // the polished extremes lie between nodes, at most their stated error beyond them
    const slack =
      (summary.statistics['minimum_thickness_error_m'] ?? 0) +
      (summary.statistics['maximum_thickness_error_m'] ?? 0) +
      1e-15;
    expect(Math.min(...thickness)).toBeGreaterThanOrEqual((summary.statistics['minimum_thickness_m'] ?? NaN) - slack);
    expect(Math.max(...thickness)).toBeLessThanOrEqual((summary.statistics['maximum_thickness_m'] ?? NaN) + slack);
    expect(map.rows.every((row) => Number(row[4]) > 0 && Number(row[4]) < 90)).toBe(true);
    const profile = table(readFileSync(join(out, 'radial-profile.csv'), 'utf8'));
    expect(profile.heading).toEqual(['radius_m', 'mean_nm', 'min_nm', 'max_nm']);
    expect(
      profile.rows.every(
        ([, mean, low, high]) => Number(low) <= Number(mean) * (1 + 1e-9) && Number(mean) <= Number(high) * (1 + 1e-9),
      ),
    ).toBe(true);
    const witnesses = table(readFileSync(join(out, 'witnesses.csv'), 'utf8'));
    expect(witnesses.rows.map((row) => row[0])).toEqual(summary.witnesses.map(({ name }) => name));
    witnesses.rows.forEach((row, i) =>
      expect(Number(row[4]) * 1e-9).toBeCloseTo(summary.witnesses[i]?.thickness_m ?? NaN, 15),
    );
    const picture = PNG.sync.read(readFileSync(join(out, 'thickness.png')));
    expect([picture.width, picture.height]).toEqual([880, 792]);
    const colours = new Set<number>();
    for (let o = 0; o < picture.data.length; o += 4) colours.add(picture.data.readUInt32BE(o));
    expect(colours.size).toBeGreaterThan(150); // map and bar show the colour scale
  });

  test.each([
    ['no file', []],
    ['a file that is not there', ['nowhere.json']],
    ['a folder', ['presets']],
    ['too few points', [PRESET, '--points', '3']],
    ['points that are no number', [PRESET, '--points', 'many']],
    ['an unknown option', [PRESET, '--fast']],
  ])('refuses %s with code 2 and a sentence', async (_what, args) => {
    const { code, stdout, stderr } = await run('evaluate', ...args);
    expect(code).toBe(2);
    expect(stdout).toBe('');
    expect(stderr.trim()).not.toBe('');
    expect(stderr).not.toContain('    at ');
  });

  test('explains itself', async () => {
    const { code, stdout } = await run('evaluate', '--help');
    expect(code).toBe(0);
    for (const option of ['--out', '--points', '--json']) expect(stdout).toContain(option);
  });
});

describe('validate', () => {
  test('says in one line that a sound file is sound', async () => {
    const { code, stdout } = await run('validate', PRESET);
    expect(code).toBe(0);
    expect(stdout).toMatch(/sound\. "Tarn Hill 2\.6 m, as wired": 36 filaments, 1 obstacle, 3 witnesses\.\n$/);
  });

  test('names the problem of a broken design and exits with 2', async () => {
    // a third of them, starting with the first: each takes a process of its own; the rest are tested without one
    const files = writeBrokenFiles(folder).filter((_, i) => i % 3 === 2 || i < 8);
    expect(files.length).toBeGreaterThanOrEqual(60);
    const queue = [...files];
    const failures: string[] = [];
    const work = async (): Promise<void> => {
      for (let file = queue.pop(); file; file = queue.pop()) {
        const { code, stdout, stderr } = await run('validate', file.path);
        const isNamed = stderr
          .split('\n')
          .some((line) => line.includes(file.expectedMessage) && line.trim().startsWith(file.expectedPath));
        if (code !== 2 || stdout !== '' || !isNamed) failures.push(`${file.path}: code ${code}\n${stderr}`);
      }
    };
    await Promise.all([work(), work()]);
    expect(failures).toEqual([]);
  }, 300_000);
});

test('schema prints a JSON Schema that knows the design file', async () => {
  const { code, stdout } = await run('schema');
  expect(code).toBe(0);
  const schema = JSON.parse(stdout) as { $schema: string; required: string[]; additionalProperties: boolean };
  expect(schema.$schema).toBe('https://json-schema.org/draft/2020-12/schema');
  expect(schema.required).toEqual(
    expect.arrayContaining(['format', 'version', 'name', 'mirror', 'tank', 'filamentTypes', 'filaments']),
  );
  expect(schema.additionalProperties).toBe(false);
});
