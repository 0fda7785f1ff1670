import { execFile } from 'node:child_process';
import { mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { PNG } from 'pngjs';
import { afterAll, describe, expect, test } from 'vitest';
import { encodePng } from '../../workers/report/pngUrl.ts';
import { hullOf, silhouettes } from '../../workers/report/silhouettes.ts';
import { packSolids } from '../../engine/geometry/solids.ts';
import { plantOf } from '../support/plants.ts';
import { CASES } from '../engine/explain/cases.ts';

const ROOT = fileURLToPath(new URL('../..', import.meta.url));
const AS_WIRED = 'presets/tarn-hill-as-wired.json';
const SECOND_RING = 'presets/tarn-hill-second-ring.json';
/** Kills a command that hangs. */
const HANGS = 60_000;
const folder = mkdtempSync(join(tmpdir(), 'evenfall-explain-'));
afterAll(() => rmSync(folder, { recursive: true }));

interface Outcome {
  readonly code: number | null;
  readonly stdout: string;
  readonly stderr: string;
}

async function explain(...args: string[]): Promise<Outcome> {
  return new Promise((resolve) => {
    const child = execFile(
      process.execPath,
      ['--import', 'tsx', 'workers/cli/explain.ts', ...args],
      { cwd: ROOT, timeout: HANGS },
      (_error, stdout, stderr) => resolve({ code: child.exitCode, stdout, stderr }),
    );
  });
}

describe('explain', () => {
  test('writes a page that stands alone, and says question and answer', async () => {
    const out = join(folder, 'page.html');
    const { code, stdout, stderr } = await explain(
      AS_WIRED,
      '--against',
      SECOND_RING,
      '--out',
      out,
      '--date',
      '1 <March>',
    );
    expect([code, stderr]).toEqual([0, '']);
    expect(stdout).toMatch(/^Why is the middle thin\? The coat is 69\.9 nm thick at the edge of the hole, 44 % less/);
    const page = readFileSync(out, 'utf8');
    expect(page).toMatch(/^<!doctype html>\n<html lang="en">/);
    for (const part of ['Tarn Hill 2.6 m, as wired', 'Tarn Hill 2.6 m, with a second ring', '1 &#60;March&#62;'])
      expect(page.replaceAll('\u00a0', ' ')).toContain(part);
    expect(page).not.toMatch(/<script|<link|@import|url\((?!#)|\son\w+="|https?:/);
    // every address is a picture inside the page or a mark of the picture itself
    for (const [, address] of page.matchAll(/(?:href|src)="([^"]*)"/g))
      expect(address).toMatch(/^data:image\/png;base64,/);
  });

  test.concurrent.each([
    ['no file', ['--out', 'x.html'], "missing required argument 'file'"],
    ['no page to write', [AS_WIRED], "required option '--out <page>' not specified"],
    [
      'a compared file that is not there',
      [AS_WIRED, '--against', 'gone.json', '--out', 'x.html'],
      'the file "gone.json" is not there',
    ],
    [
      'a page in a folder that is not there',
      [AS_WIRED, '--out', 'no/such/folder/x.html'],
      '--out: the page cannot be written',
    ],
  ])('refuses %s with code 2 and a sentence', async (_what, args, sentence) => {
    const { code, stdout, stderr } = await explain(...args);
    expect(code).toBe(2);
    expect(stdout).toBe('');
    expect(stderr).toContain(sentence);
    expect(stderr).not.toContain('    at ');
  });

  test('names every problem of every broken file with its path', async () => {
    const broken = JSON.parse(readFileSync(join(ROOT, AS_WIRED), 'utf8')) as { tank: object; film: object };
    const [first, second] = [join(folder, 'first.json'), join(folder, 'second.json')];
    writeFileSync(first, JSON.stringify({ ...broken, film: { target: 100 } }));
    writeFileSync(second, JSON.stringify({ ...broken, tank: { diameter: '-3 m', depth: '2 m' } }));
    const { code, stderr } = await explain(first, '--against', second, '--out', join(folder, 'never.html'));
    expect(code).toBe(2);
    expect(stderr).toMatch(/first\.json: 1 problem\n {2}film\.target: /);
    expect(stderr).toMatch(/second\.json: 1 problem\n {2}tank\.diameter: /);
  });
});

describe('the pictures', () => {
  test('are PNG files that another reader opens to the same pixels', () => {
    const [width, height] = [5, 3];
    const pixels = Uint8ClampedArray.from({ length: 4 * width * height }, (_, i) => (i * 37) % 256);
    const read = PNG.sync.read(Buffer.from(encodePng(width, height, pixels)));
    expect([read.width, read.height]).toEqual([width, height]);
    expect([...read.data]).toEqual([...pixels]);
  });

  test('outline a point set by its hull', () => {
    const hull = hullOf([
      [0, 0],
      [1, 1],
      [2, 0],
      [2, 2],
      [0, 2],
      [1, 0.5],
      [1, 0],
    ]);
    expect(hull).toEqual([
      [0, 0],
      [2, 0],
      [2, 2],
      [0, 2],
    ]);
  });

  test('outline obstacles where they are: a turned box, an upright cone, a sphere', () => {
    const part = { name: 'a' };
    const solids = packSolids([
      { ...part, shape: 'box', center: [1, 0, 2], size: [2, 0.4, 0.2], rotation: [0, 0, Math.PI / 2] },
      { ...part, shape: 'cone frustum', from: [0, 0, 1], to: [0, 0, 2], fromDiameter: 2, toDiameter: 1 },
      { ...part, shape: 'sphere', center: [0, 3, 1], diameter: 2 },
    ]);
    const plant = { ...plantOf(CASES.even), solids };
    const [box, cone, sphere] = silhouettes(plant, ([x, , z]) => [x, z]).map((outline) => ({
      x: [Math.min(...outline.map(([x]) => x)), Math.max(...outline.map(([x]) => x))],
      z: [Math.min(...outline.map(([, z]) => z)), Math.max(...outline.map(([, z]) => z))],
    }));
    const expectNear = (actual: number[], expected: number[]): void =>
      actual.forEach((value, i) => expect(value).toBeCloseTo(expected[i]!, 12));
    expectNear([...box!.x, ...box!.z], [0.8, 1.2, 1.9, 2.1]); // its long side lies along y after the turn
    expectNear([...cone!.x, ...cone!.z], [-1, 1, 1, 2]);
    expectNear([...sphere!.x, ...sphere!.z], [-1, 1, 0, 2]);
  });
});
