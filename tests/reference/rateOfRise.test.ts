/** Rates of rise against worked examples. */
import { expect, test } from 'vitest';
import { rateOfRise, riseMolarFlow, riseThroughput, studentQuantile } from '../../engine/vacuum/rateOfRise.ts';

test('the leak example of the engine-testing rule gives 0.00030 mol/s', () => {
  // 40 CFR 1065.644, worked example: 2.0000 l, 25.300 to 50.600 kPa in 70 s at 293.15 K; the rule prints 0.00030
  const flow = riseMolarFlow(
    2e-3,
    { time: 0, pressure: 25300, temperature: 293.15 },
    { time: 70, pressure: 50600, temperature: 293.15 },
  );
  expect(Math.abs(flow / 2.966e-4 - 1)).toBeLessThan(2e-4); // four digits of the evaluation
  expect(Number(flow.toFixed(5))).toBe(0.0003);
});

test('20 m³ rising by 1e-4 mbar in 600 s take in 3.33e-3 mbar·l/s', () => {
  // Q = V Δp/Δt
  const flow = riseThroughput(20, { time: 0, pressure: 0.01 }, { time: 600, pressure: 0.02 });
  expect(Math.abs((10 * flow) / 3.333e-3 - 1)).toBeLessThan(2e-4);
});

test('10 µm of mercury an hour in 1000 l are 3.7e-3 mbar·l/s', () => {
  // rule of furnace practice: more is poor
  const flow = riseThroughput(1, { time: 0, pressure: 1 }, { time: 3600, pressure: 1 + 10 * 0.1333224 });
  expect(Math.abs((10 * flow) / 3.7e-3 - 1)).toBeLessThan(2e-3);
});

test('a straight rise is a leak and gives V dp/dt', () => {
  const readings = Array.from({ length: 13 }, (_, i) => ({ time: 50 * i, pressure: 0.01 + (0.01 * i) / 12 }));
  const result = rateOfRise(readings, 20);
  if (!result.ok) throw new Error('the readings should be sound');
  expect(result.fit.verdict).toBe('leak');
  expect(Math.abs((10 * result.fit.leak.best) / 3.333e-3 - 1)).toBeLessThan(2e-4);
});

test('Student’s t at 97.5 % agrees with the tables', () => {
  // Abramowitz & Stegun (1964), table 26.10; from memory. The series is within 0.2 % from five degrees of freedom on
  for (const [freedom, t] of [
    [5, 2.571],
    [10, 2.228],
    [20, 2.086],
    [60, 2.0],
  ] as const)
    expect(Math.abs(studentQuantile(freedom) / t - 1)).toBeLessThan(2e-3);
  expect(Math.abs(studentQuantile(2) / 4.303 - 1)).toBeLessThan(0.05);
});
