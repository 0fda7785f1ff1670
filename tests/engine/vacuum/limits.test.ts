import { describe, expect, test } from 'vitest';
import { limitAt, loadShares, residualMixture, verdictOf, whatHelps } from '../../../engine/vacuum/limits.ts';
import { pumpDown } from '../../../engine/vacuum/pumpDown.ts';
import { FULL_PLANT, steadyPump, systemFrom } from './vacuums.ts';

const plant = systemFrom(FULL_PLANT);
const curve = pumpDown(plant);
const leaky = systemFrom({ ...FULL_PLANT, leak: '2 mbar l/s' });
const leakyCurve = pumpDown(leaky);

describe('a verdict', () => {
  test('names the time and the largest load', () => {
    const verdict = verdictOf(plant, curve);
    expect(verdict.isReached).toBe(true);
    expect(verdict.time).toBe(curve.reachedAt);
    expect(verdict.sentence).toMatch(
      /^Reaches 1e-5 mbar after .*; there, the surface “mild steel” gives off .* of all/,
    );
  });

  test('of a tank that leaks too much says that it never gets there, how far it gets, and why', () => {
    const verdict = verdictOf(leaky, leakyCurve);
    expect(verdict.isReached).toBe(false);
    expect(verdict.time).toBeNull();
    expect(verdict.limit.loads[0]!.kind).toBe('leak');
    expect(verdict.sentence).toMatch(
      /^Never reaches 1e-5 mbar: after 30 d it is at .* mbar; the leak lets in 2 mbar l\/s, .* against .* l\/s\.$/,
    );
    // floor: load over speed
    const { loads, speed } = verdict.limit;
    const whole = loads.reduce((sum, { flow }) => sum + flow, 0);
    expect(Math.abs(whole / speed / verdict.floor - 1)).toBeLessThan(1e-6);
  });

  test('of pumps that cannot reach the crossover names the pump that waits', () => {
    const system = systemFrom({
      pumps: [
        { name: 'old rotary', kind: 'rotary', speed: '20 l/s', ultimate: '0.2 mbar' },
        { name: 'diffusion', kind: 'diffusion', speed: '5000 l/s' },
      ],
      crossover: '5e-2 mbar',
    });
    const { sentence } = verdictOf(system, pumpDown(system));
    expect(sentence).toContain('the pump “diffusion” opens only at 0.05 mbar');
  });

  test('of a roughing pump that cannot reach the glow discharge names the glow', () => {
    const system = systemFrom({
      pumps: [{ name: 'old rotary', kind: 'rotary', speed: '20 l/s', ultimate: '0.2 mbar' }],
      glow: { pressure: '5e-2 mbar' },
    });
    expect(verdictOf(system, pumpDown(system)).sentence).toContain('the glow discharge waits for 0.05 mbar');
  });

  test('of valves that leave a gap says that every valve is closed or waits', () => {
    const system = systemFrom({
      pumps: [
        { name: 'rotary', kind: 'rotary', speed: '20 l/s', until: '1 mbar' },
        { name: 'diffusion', kind: 'diffusion', speed: '5000 l/s' },
      ],
      leak: '1e-3 mbar l/s',
    });
    expect(verdictOf(system, pumpDown(system)).sentence).toContain('the pump “diffusion” opens only at 0.1 mbar');
  });

  test('speaks the units that it is given', () => {
    const words = {
      pressure: (value: number) => `${value.toExponential(1)} Pa`,
      flow: (value: number) => `${value.toExponential(1)} Pa m3/s`,
      speed: (value: number) => `${value.toFixed(1)} m3/s`,
    };
    expect(verdictOf(plant, curve, words).sentence).toMatch(/^Reaches 1\.0e-3 Pa after .* Pa m3\/s, .* m3\/s\.$/);
  });
});

test('shares of the loads add up to one, largest first', () => {
  for (const i of [0, 50, curve.count - 1]) {
    const shares = loadShares(curve, i);
    expect(shares.reduce((sum, { share }) => sum + share, 0)).toBeCloseTo(1, 12);
    for (let k = 1; k < shares.length; k++) expect(shares[k]!.flow).toBeLessThanOrEqual(shares[k - 1]!.flow);
  }
});

test('the residual gas is air at first and mostly water when all else is pumped', () => {
  expect(residualMixture(curve, 0).air).toBeGreaterThan(0.98);
  const late = residualMixture(curve, curve.count - 1);
  expect(late.H2O).toBeGreaterThan(0.5);
  expect(late.air! + late.H2O! + late.N2!).toBeCloseTo(1, 12);
});

test('while the tank is still being emptied, that is what is said', () => {
  const limit = limitAt(plant, curve, 20);
  expect(limit.emptying).toBeGreaterThan(0.99);
  expect(limitAt(plant, curve, curve.count - 1).emptying).toBeLessThan(0.01);
  const fast = systemFrom(
    { pumps: [steadyPump('100 l/s')], surfaces: [], leak: '1e-6 mbar l/s' },
    { pressure: '1 mbar' },
  );
  expect(verdictOf(fast, pumpDown(fast)).sentence).toContain('are still emptying the tank');
});

describe('what helps', () => {
  test('a tank that leaks too much is a tight one', () => {
    const [best] = whatHelps(leaky, leakyCurve);
    expect(best).toMatchObject({ change: 'no leak', verdict: 'reaches' });
    expect(Math.abs(best!.time! / pumpDown({ ...leaky, leak: 0 }).reachedAt! - 1)).toBeLessThan(1e-12);
  });

  test('a tank with a rusty wall is less of it, or drier venting, and not a tight leak', () => {
    const helps = whatHelps(plant, curve);
    expect(helps[0]!.change).toMatch(/mild steel|dry gas/);
    expect(helps.find(({ change }) => change === 'no leak')!.verdict).toBe('no help');
  });
});
