import { execFile } from 'node:child_process';
import { readFileSync, mkdirSync, writeFileSync } from 'node:fs';
import { fileURLToPath } from 'node:url';
import { promisify } from 'node:util';
import { expect, test } from 'vitest';

const ROOT = fileURLToPath(new URL('../..', import.meta.url));

test("the README's script loads a design, sweeps a height and prints a table", async () => {
  const readme = readFileSync(`${ROOT}/README.md`, 'utf8');
  const script = /```ts\n(.*?)```/s.exec(readme)?.[1] ?? '';
  expect(script).toContain("from 'evenfall'");
  expect(script.trim().split('\n').length).toBeLessThanOrEqual(12);
  mkdirSync(`${ROOT}/.cache`, { recursive: true });
  const path = `${ROOT}/.cache/sweep.ts`;
  writeFileSync(path, script);
  const { stdout } = await promisify(execFile)('node', ['--import', 'tsx', path], { cwd: ROOT });
  const rows = stdout
    .trim()
    .split('\n')
    .map((line) => /^([\d.]+) m {2}([\d.]+) nm {2}±([\d.]+) %$/.exec(line)?.slice(1).map(Number));
  expect(rows.map((row) => row?.[0])).toEqual([0.7, 0.9, 1.1, 1.3]);
  // a higher ring is farther away: the same charge lays less
  const means = rows.map((row) => row?.[1] ?? NaN);
  expect(means).toEqual(means.toSorted((p, q) => q - p));
});
