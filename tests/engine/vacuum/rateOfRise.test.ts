import fc from 'fast-check';
import { uniformFloat64 } from 'pure-rand/distribution/uniformFloat64';
import { xoroshiro128plus } from 'pure-rand/generator/xoroshiro128plus';
import { describe, expect, test } from 'vitest';
import { rateOfRise, type RiseFit } from '../../../engine/vacuum/rateOfRise.ts';
import type { PressureReading } from '../../../engine/vacuum/readings.ts';

const VOLUME = 13;
const SPAN = 1800;

/** Normal numbers from a seed; neighbouring seeds begin alike, so the first numbers are passed over. */
function normals(seed: number): () => number {
  const generator = xoroshiro128plus(seed);
  const uniform = (): number => uniformFloat64(generator);
  for (let i = 0; i < 50; i++) uniform();
  return () => Math.sqrt(-2 * Math.log(1 - uniform())) * Math.cos(2 * Math.PI * uniform());
}

const exact = (): number => 0;

interface Rise {
  readonly leak: number;
  /** Pa that outgassing brings in the end */
  readonly amplitude: number;
  readonly settling: number;
  /** reading error over the rise */
  readonly noise: number;
}

/** p(t) = p0 + leak t/V + amplitude (1 − e^(−t/τ)), with reading errors of a share of the rise. */
function readingsOf({ leak, amplitude, settling, noise }: Rise, normal: () => number, count = 25): PressureReading[] {
  const pressureAt = (time: number): number =>
    1e-2 + (leak * time) / VOLUME + amplitude * -Math.expm1(-time / settling);
  const rise = pressureAt(SPAN) - pressureAt(0);
  return Array.from({ length: count }, (_, i) => {
    const time = (SPAN * i) / (count - 1);
    return { time, pressure: pressureAt(time) + noise * rise * normal() };
  });
}

function fitOf(readings: readonly PressureReading[]): RiseFit {
  const result = rateOfRise(readings, VOLUME);
  if (!result.ok) throw new Error(result.faults.map(({ message }) => message).join('; '));
  return result.fit;
}

describe('exact readings', () => {
  test('of a leak alone give it back', () => {
    const fit = fitOf(readingsOf({ leak: 1e-4, amplitude: 0, settling: 300, noise: 0 }, exact));
    expect(fit.verdict).toBe('leak');
    expect(fit.leak.best / 1e-4).toBeCloseTo(1, 6);
    expect(fit.leakShare.best).toBeCloseTo(1, 6);
    expect(fit.sentence).toMatch(/^A leak of 1e-3 mbar l\/s/);
  });

  test('of outgassing alone name it', () => {
    const fit = fitOf(readingsOf({ leak: 0, amplitude: 5e-3, settling: 250, noise: 0 }, exact));
    expect(fit.verdict).toBe('outgassing');
    expect(fit.leakShare.high).toBeLessThan(0.05);
    expect(fit.settling! / 250).toBeCloseTo(1, 1); // steps of 6 % between the settling times that are tried
    expect(fit.outgassing / ((5e-3 / 250) * VOLUME)).toBeCloseTo(1, 1);
  });

  test('of both alike say so', () => {
    const fit = fitOf(readingsOf({ leak: (3e-3 * VOLUME) / SPAN, amplitude: 3e-3, settling: 250, noise: 0 }, exact));
    expect(fit.verdict).toBe('both');
    expect(Math.abs(fit.leakShare.best - 0.5)).toBeLessThan(0.02);
  });

  test('fit each reading', () => {
    const readings = readingsOf({ leak: 1e-5, amplitude: 2e-3, settling: 300, noise: 0 }, exact);
    const { fitted, scatter } = fitOf(readings);
    readings.forEach(({ pressure }, i) => expect(Math.abs(fitted[i]! - pressure)).toBeLessThan(2e-5));
    expect(scatter).toBeLessThan(1e-5);
  });
});

describe('readings with errors of two per cent', () => {
  test('keep the true leak within its range nineteen times out of twenty', () => {
    const runs = 400;
    const normal = normals(12345);
    let inside = 0;
    for (let run = 0; run < runs; run++) {
      const rise = { leak: 1e-5, amplitude: 2e-3, settling: 250, noise: 0.02 };
      const { leak } = fitOf(readingsOf(rise, normal));
      if (leak.low <= rise.leak && rise.leak <= leak.high) inside++;
    }
    const standardError = Math.sqrt((0.95 * 0.05) / runs);
    expect(Math.abs(inside / runs - 0.95)).toBeLessThan(4 * standardError);
  });

  test('do not blame the wrong one', () => {
    const normal = normals(2);
    let wrong = 0;
    for (let run = 0; run < 100; run++) {
      const leak = { leak: 1e-4, amplitude: 0, settling: 250, noise: 0.02 };
      const outgassing = { leak: 0, amplitude: 5e-3, settling: 250, noise: 0.02 };
      if (fitOf(readingsOf(leak, normal)).verdict === 'outgassing') wrong++;
      if (fitOf(readingsOf(outgassing, normal)).verdict === 'leak') wrong++;
    }
    expect(wrong).toBe(0);
  });

  test('that scatter more than they rise show no rise', () => {
    const normal = normals(5);
    const flat = Array.from({ length: 20 }, (_, i) => ({ time: 60 * i, pressure: 1e-2 * (1 + 0.01 * normal()) }));
    expect(fitOf(flat).verdict).toBe('no rise');
  });

  test('that are few and rough stay undecided', () => {
    const rise = { leak: 3e-5, amplitude: 2e-3, settling: 700, noise: 0.05 };
    const { verdict, leakShare } = fitOf(readingsOf(rise, normals(3), 7));
    expect(leakShare.high - leakShare.low).toBeGreaterThan(0.3);
    expect(verdict).toBe('undecided');
  });
});

test('a fit scales with pressure and time, and leak and outgassing are never negative', () => {
  fc.assert(
    fc.property(
      fc.integer({ min: 1, max: 1e6 }),
      fc.double({ min: 1e-4, max: 1e4, noNaN: true }),
      fc.double({ min: 1e-2, max: 1e2, noNaN: true }),
      (seed, pressureFactor, timeFactor) => {
        const readings = readingsOf({ leak: 2e-5, amplitude: 1e-3, settling: 400, noise: 0.03 }, normals(seed));
        const fit = fitOf(readings);
        const scaledFit = fitOf(
          readings.map(({ time, pressure }) => ({ time: time * timeFactor, pressure: pressure * pressureFactor })),
        );
        expect(fit.leak.low).toBeGreaterThanOrEqual(0);
        expect(fit.outgassing).toBeGreaterThanOrEqual(0);
        expect(fit.leak.low).toBeLessThanOrEqual(fit.leak.best);
        expect(fit.leak.best).toBeLessThanOrEqual(fit.leak.high);
        expect(scaledFit.verdict).toBe(fit.verdict);
        expect(Math.abs(scaledFit.leakShare.high - fit.leakShare.high)).toBeLessThan(1e-6); // bisection of the limit
      },
    ),
    { seed: 77, numRuns: 40 },
  );
});

describe('bad readings', () => {
  const good = readingsOf({ leak: 1e-4, amplitude: 0, settling: 300, noise: 0 }, exact, 8);
  const changed = (i: number, change: Partial<PressureReading>): PressureReading[] =>
    good.map((reading, k) => (k === i ? { ...reading, ...change } : reading));

  test.each([
    ['out of order', changed(3, { time: 1 }), 4, 'time', 'expected a time after'],
    ['twice at one time', changed(3, { time: good[2]!.time }), 4, 'time', 'expected a time after'],
    ['negative', changed(2, { pressure: -1e-3 }), 3, 'pressure', 'above zero; found -0.001 Pa'],
    ['zero', changed(2, { pressure: 0 }), 3, 'pressure', 'above zero'],
    ['above the atmosphere', changed(2, { pressure: 5e5 }), 3, 'pressure', 'at most atmospheric'],
    ['not a number', changed(5, { pressure: NaN }), 6, 'pressure', 'expected a pressure; found NaN'],
    ['timeless', changed(5, { time: Infinity }), 6, 'time', 'expected a time; found Infinity'],
  ] as const)('that are %s are told with their row', (_name, readings, row, column, message) => {
    const result = rateOfRise(readings, VOLUME);
    expect(result.ok ? [] : result.faults).toContainEqual({
      row,
      column,
      message: expect.stringContaining(message) as string,
    });
  });

  test('that are too few are refused', () => {
    for (const count of [0, 1, 5]) {
      const result = rateOfRise(good.slice(0, count), VOLUME);
      expect(result.ok ? '' : result.faults[0]?.message).toContain(`expected at least 6 readings`);
    }
  });

  test('and a tank without volume are refused', () => {
    for (const volume of [0, -1, NaN, Infinity]) expect(() => rateOfRise(good, volume)).toThrow('volume: expected');
  });
});
