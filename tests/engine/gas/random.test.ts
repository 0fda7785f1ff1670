import { expect, test } from 'vitest';
import { createRandom, keyInto, nextWord, uniform } from '../../../engine/gas/random.ts';
import { drawDirectionInto, drawFluxSpeed, drawMaxwellSpeed } from '../../../engine/gas/draw.ts';

/** Five standard deviations: missed once in two million by a fair generator; the seeds are fixed. */
const DEVIATIONS = 5;
/** Three squares and a root. */
const ROUNDING = 1e-14;

/** How far χ² of counts that should be even lies from its mean, in standard deviations. */
function unevenness(counts: ArrayLike<number>): number {
  const list = Array.from(counts);
  const mean = list.reduce((sum, count) => sum + count, 0) / list.length;
  const chi2 = list.reduce((sum, count) => sum + (count - mean) ** 2 / mean, 0);
  const freedom = list.length - 1;
  return Math.abs(chi2 - freedom) / Math.sqrt(2 * freedom);
}

test('words follow the published generator', () => {
  const random = createRandom();
  random.set([1, 2, 3, 4]);
  // first outputs of xoshiro128++ from the state 1, 2, 3, 4: from memory of the test vectors that its ports share
  const expected = [641, 1573767, 3222811527, 3517856514, 836907274, 4247214768, 3867114732, 1355841295];
  expect(expected.map(() => nextWord(random) >>> 0)).toEqual(expected);
});

test('numbers of one stream, and first numbers of neighbouring streams, fill the square evenly', () => {
  const random = createRandom();
  const other = createRandom();
  const SIDE = 32;
  const at = (x: number, y: number): number => SIDE * Math.floor(SIDE * x) + Math.floor(SIDE * y);
  const within = new Uint32Array(SIDE * SIDE);
  const across = [0, 1, 2].map(() => new Uint32Array(SIDE * SIDE));
  keyInto(random, 7, 0, 0);
  for (let k = 0; k < 200_000; k++) within[at(uniform(random), uniform(random))]!++;
  for (let k = 0; k < 100_000; k++) {
    const key: [number, number, number] = [k % 5, Math.floor(k / 500), k % 500];
    across.forEach((counts, step) => {
      keyInto(random, ...key);
      const next = [...key] as [number, number, number];
      next[step]! += step === 0 ? 5 : step === 1 ? 200 : 500;
      keyInto(other, ...next);
      counts[at(uniform(random), uniform(other))]!++;
    });
  }
  for (const counts of [within, ...across]) expect(unevenness(counts)).toBeLessThan(DEVIATIONS);
});

test('streams of different keys differ, of equal keys are equal', () => {
  const random = createRandom();
  const firstWords = (seed: number, chunk: number, atom: number): string => {
    keyInto(random, seed, chunk, atom);
    return `${nextWord(random)},${nextWord(random)}`;
  };
  const seen = new Set<string>();
  for (let seed = 0; seed < 10; seed++)
    for (let chunk = 0; chunk < 100; chunk++)
      for (let atom = 0; atom < 100; atom++) seen.add(firstWords(seed, chunk, atom));
  expect(seen.size).toBe(100_000);
  expect(firstWords(3, 4, 5)).toBe(firstWords(3, 4, 5));
});

const DRAWS = 200_000;

/** Mean of a quantity over many draws and its standard error. */
function meanOf(draw: () => number): { readonly mean: number; readonly error: number } {
  let [sum, squares] = [0, 0];
  for (let k = 0; k < DRAWS; k++) {
    const value = draw();
    sum += value;
    squares += value * value;
  }
  const mean = sum / DRAWS;
  return { mean, error: Math.sqrt((squares / DRAWS - mean * mean) / DRAWS) };
}

test.each([
  // moments of x² e^(−x²) and x³ e^(−x²) over 0 … ∞: gamma functions
  ['Maxwell', drawMaxwellSpeed, [2 / Math.sqrt(Math.PI), 1.5, 4 / Math.sqrt(Math.PI), 3.75]],
  ['flux', drawFluxSpeed, [0.75 * Math.sqrt(Math.PI), 2, (15 / 8) * Math.sqrt(Math.PI), 6]],
] as const)('the first four moments of %s speeds are those of the law', (_name, draw, moments) => {
  const random = createRandom();
  moments.forEach((expected, i) => {
    keyInto(random, 11, i, 0);
    const { mean, error } = meanOf(() => draw(random) ** (i + 1));
    expect(Math.abs(mean - expected)).toBeLessThan(DEVIATIONS * error);
  });
});

test('directions are unit vectors, spread evenly in height and turn', () => {
  const random = createRandom();
  keyInto(random, 12, 0, 0);
  const d = new Float64Array(3);
  const SIDE = 16;
  const counts = new Uint32Array(SIDE * SIDE);
  let worst = 0;
  for (let k = 0; k < DRAWS; k++) {
    drawDirectionInto(d, 0, random);
    worst = Math.max(worst, Math.abs(d[0]! ** 2 + d[1]! ** 2 + d[2]! ** 2 - 1));
    const turn = Math.atan2(d[1]!, d[0]!) / (2 * Math.PI) + 0.5;
    counts[
      SIDE * Math.min(SIDE - 1, Math.floor(((d[2]! + 1) / 2) * SIDE)) + Math.min(SIDE - 1, Math.floor(turn * SIDE))
    ]!++;
  }
  expect(worst).toBeLessThan(ROUNDING);
  expect(unevenness(counts)).toBeLessThan(DEVIATIONS);
});
