import { describe, expect, test } from 'vitest';
import { NODES, stiffStepper, WEIGHTS, type StiffProblem } from '../../../engine/vacuum/stiff.ts';

/** A few products and sums of doubles. */
const ROUNDING = 1e-14;

/** y' = −y² cos t with y(0) = 1: y = 1/(1 + sin t). Its integral is ln-free, so the integrand is cos t: sin t. */
const smooth: StiffProblem = {
  count: 1,
  integralCount: 1,
  rateInto: (out, time, y) => void (out[0] = -(y[0]! ** 2) * Math.cos(time)),
  slopesInto: (out, time, y) => void (out[0] = -2 * y[0]! * Math.cos(time)),
  integrandsInto: (out, time) => void (out[0] = Math.cos(time)),
};

/** y' = λ (s(t) − y) + s'(t) follows s(t) = 1/(1 + t), however large λ is. */
const following = (lambda: number): StiffProblem => ({
  count: 1,
  integralCount: 0,
  rateInto: (out, time, y) => void (out[0] = lambda * (1 / (1 + time) - y[0]!) - 1 / (1 + time) ** 2),
  slopesInto: (out) => void (out[0] = -lambda),
  integrandsInto: () => undefined,
});

function integrate(problem: StiffProblem, end: number, count: number): { y: number; integral: number } {
  const stepper = stiffStepper(problem);
  const y = Float64Array.of(1);
  const scale = Float64Array.of(1e-8);
  let integral = 0;
  for (let k = 0; k < count; k++) {
    expect(stepper.step((k * end) / count, y, end / count, scale)).toBeLessThan(Infinity);
    y.set(stepper.y);
    integral += stepper.integrals[0] ?? 0;
  }
  return { y: y[0]!, integral };
}

describe('the step', () => {
  test('has weights that satisfy the conditions of order 5', () => {
    // E. Hairer, S. P. Nørsett, G. Wanner, Solving ODEs I, II.7: B(5), C(3); from memory
    const last = WEIGHTS[2]!;
    for (let q = 1; q <= 5; q++) {
      const sum = last.reduce((total, weight, i) => total + weight * NODES[i]! ** (q - 1), 0);
      expect(Math.abs(sum - 1 / q)).toBeLessThan(ROUNDING);
    }
    for (let q = 1; q <= 3; q++)
      WEIGHTS.forEach((row, i) => {
        const sum = row.reduce((total, weight, j) => total + weight * NODES[j]! ** (q - 1), 0);
        expect(Math.abs(sum - NODES[i]! ** q / q)).toBeLessThan(ROUNDING);
      });
  });

  test('halving it divides the error by thirty-two', () => {
    const exact = 1 / (1 + Math.sin(1.5));
    const [coarse, fine] = [8, 16].map((count) => Math.abs(integrate(smooth, 1.5, count).y - exact));
    const order = Math.log2(coarse! / fine!);
    expect(order).toBeGreaterThan(4.7);
    expect(order).toBeLessThan(5.4);
  });

  test('integrates beside the equation to the same order', () => {
    expect(Math.abs(integrate(smooth, 1.5, 16).integral - Math.sin(1.5))).toBeLessThan(1e-8);
  });

  test('follows a slow path through stiffness of any size', () => {
    // 10 steps of 1 s: h λ from 1e3 to 1e9; what is left is the error of the stages, of order 3 in h
    for (const lambda of [1e3, 1e6, 1e9]) {
      const problem = following(lambda);
      expect(Math.abs(integrate(problem, 10, 10).y * 11 - 1)).toBeLessThan(1e-4);
    }
  });

  test('says so when its equations cannot be solved', () => {
    const blowUp: StiffProblem = { ...smooth, rateInto: (out) => void (out[0] = NaN) };
    expect(stiffStepper(blowUp).step(0, Float64Array.of(1), 1, Float64Array.of(1))).toBe(Infinity);
  });
});
