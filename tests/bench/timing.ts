/** How the bench takes times. */

export const REPEATS = 9;

interface Repeats {
  /** runs before those that count */
  readonly warmUp?: number;
  readonly count?: number;
}

/** Times of `work` in ms, the shortest first. */
export async function timesOf(work: () => unknown, { warmUp = 2, count = REPEATS }: Repeats): Promise<number[]> {
  const times: number[] = [];
  for (let i = 0; i < warmUp + count; i++) {
    const start = performance.now();
    await work();
    if (i >= warmUp) times.push(performance.now() - start);
  }
  return times.toSorted((a, b) => a - b);
}

export const middleOf = (sorted: readonly number[]): number => sorted[sorted.length >> 1] ?? NaN;

/** Median time of `work` in ms. */
export async function median(work: () => unknown, repeats: Repeats = {}): Promise<number> {
  return middleOf(await timesOf(work, repeats));
}

/** Slopes are taken of short runs, which a hiccup would spoil. */
export const FOR_SLOPES = { warmUp: 5, count: 31 };

/** Threads reach their pace after some hundred runs, when the just-in-time compiler is through with them. */
export const IN_THREADS = { warmUp: 150, count: 31 };

export const ms = (value: number): string => `${value.toFixed(value < 10 ? 2 : 1)} ms`;
