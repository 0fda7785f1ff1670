/** Pump-downs against closed forms and worked examples. */
import { describe, expect, test } from 'vitest';
import { outgassingRate, OUTGASSING, powerLaw } from '../../engine/vacuum/outgassing.ts';
import { pumpDown } from '../../engine/vacuum/pumpDown.ts';
import { pressureAt } from '../../engine/vacuum/pumpDownCurve.ts';
import { spreadDesorption, waterBound } from '../../engine/vacuum/water.ts';
import { steadyPump, systemFrom } from '../engine/vacuum/vacuums.ts';

/** Sum of the errors of some 300 steps of 1e-6 each, most of which cancel or decay. */
const INTEGRATION = 1e-6;
/** Half of the last of four printed digits. */
const FOUR_DIGITS = 5e-4;

const emptied = (volume: string, speed: string, from: number, to: string, ultimate = '1e-12 mbar'): number => {
  const system = systemFrom({ volume, pumps: [steadyPump(speed, { ultimate })], surfaces: [] }, { pressure: to });
  return pumpDown(system, { from }).reachedAt!;
};

describe('a tank emptied at constant speed', () => {
  // t = (V/S) ln[(p0 − pu)/(p − pu)]
  test('of 10 m³ at 100 m³/h takes 41.52 min from 1013 mbar to 1 mbar, and 55.34 min to 0.1 mbar', () => {
    expect(Math.abs(emptied('10 m3', '100 m3/h', 101300, '1 mbar') / 60 / 41.52 - 1)).toBeLessThan(FOUR_DIGITS);
    expect(Math.abs(emptied('10 m3', '100 m3/h', 101300, '0.1 mbar') / 60 / 55.34 - 1)).toBeLessThan(FOUR_DIGITS);
  });

  test('slows down toward its ultimate pressure: 932.86 s for V/S = 100 s and 0.01 mbar', () => {
    const time = emptied('10 m3', '100 l/s', 101300, '0.1 mbar', '1e-2 mbar');
    expect(Math.abs(time / (100 * Math.log((1013 - 0.01) / 0.09)) - 1)).toBeLessThan(INTEGRATION);
    expect(Math.abs(time / 932.86 - 1)).toBeLessThan(1e-5); // five printed digits
  });

  test('of 750 cubic feet takes 3 min from 760 to 150 Torr at 405 cfm', () => {
    // worked example, dekkervacuum.com: logarithm rounded to 1.62, 405 cfm
    expect(Math.abs(emptied('750 ft3', '405 cfm', 101325, '150 Torr') / 180 - 1)).toBeLessThan(2.5e-3);
  });

  test('of 1000 m³ takes 10 min from 1000 to 200 mbar at 160 m³/min', () => {
    // worked example, vacuum-guide.com: 160 m³/min, rounded from 160.9
    expect(Math.abs(emptied('1000 m3', '9600 m3/h', 1e5, '200 mbar') / 600 - 1)).toBeLessThan(0.006);
  });
});

test('a constant load ends in load over speed, approached as the closed form says', () => {
  // p = Q/S + (p0 − Q/S) e^(−St/V)
  const system = systemFrom(
    { volume: '10 m3', pumps: [steadyPump('100 l/s')], surfaces: [], leak: '1 mbar l/s' },
    { pressure: '1.1e-2 mbar' },
  );
  const { reachedAt } = pumpDown(system, { from: 1000 });
  expect(Math.abs(reachedAt! / (100 * Math.log((10 - 0.01) / (0.011 - 0.01))) - 1)).toBeLessThan(INTEGRATION);
});

test('outgassing as 1/t leaves a tail of q A/S: 3.0e-7 mbar after 1 h, 3.0e-8 after 10 h', () => {
  // 60 m², 1e-8 mbar·l/(s·cm²) at 1 h, 20 000 l/s
  const system = systemFrom(
    {
      pumps: [steadyPump('20000 l/s')],
      surfaces: [{ material: 'stainless steel', area: '60 m2', rate: '1e-8 mbar l/(s cm2)', exponent: 1 }],
    },
    { pressure: '2e-8 mbar' },
  );
  const curve = pumpDown(system);
  // the gas lags behind its source by V/S = 0.5 s: 1.4e-4 of an hour
  expect(Math.abs(pressureAt(curve, 3600) / 3e-5 - 1)).toBeLessThan(FOUR_DIGITS);
  expect(Math.abs(pressureAt(curve, 36000) / 3e-6 - 1)).toBeLessThan(FOUR_DIGITS);
});

describe('outgassing rates', () => {
  // R. J. Elsey, Vacuum 25 (1975) 299 and 347, as tabulated by O'Hanlon, mbar·l/(s·cm²); from memory
  test.each([
    ['aluminium', 8.3e-9, 4.3e-10],
    ['mild steel', 7.2e-7, 6.7e-8],
    ['rusty steel', 8.0e-7, 1.7e-8],
    ['stainless steel', 1.8e-8, 2.0e-9],
    ['electropolished steel', 5.7e-9, 5.7e-10],
    ['glass', 9.8e-9, 5.5e-10],
  ] as const)('of %s pass through the published %d at 1 h and %d at 10 h', (material, one, ten) => {
    const { law } = OUTGASSING[material];
    expect(Math.abs(outgassingRate(law, 3600) / (1e3 * one) - 1)).toBeLessThan(1e-12);
    expect(Math.abs(outgassingRate(law, 36000) / (1e3 * ten) - 1)).toBeLessThan(1e-12);
  });

  test('of a power law follow it from a quarter of an hour on', () => {
    // q = q1 (t/1 h)^−α: Pfeiffer Vacuum, Vacuum Technology Book, 1.3.3
    for (const hours of [0.25, 0.5, 1, 3, 10, 100])
      expect(Math.abs(outgassingRate(powerLaw(2, 0.5), 3600 * hours) / (2 * hours ** -0.5) - 1)).toBeLessThan(1e-6);
  });
});

describe('water that desorbs', () => {
  test('from one layer stays below 1.143e-4 Torr·A/(S t), whatever holds it', () => {
    // maximum of (n0/τ) e^(−t/τ) over τ, n0 = 1e19 m⁻², 300 K; D. Edwards (1976), by its abstract, has 1.146
    const bound = waterBound(1, 1, 1, 1, 300) / 133.3224;
    expect(Math.abs(bound / 1.143e-4 - 1)).toBeLessThan(FOUR_DIGITS);
  });

  test('from sites of all kinds gives off one layer in all, and follows 1/t between its ends', () => {
    const [shortest, longest] = [1, 1e6];
    let gas = 0;
    const step = 0.01;
    for (let u = Math.log(1e-4); u < Math.log(1e8); u += step)
      gas += spreadDesorption(Math.exp(u), shortest, longest, 300) * Math.exp(u) * step;
    expect(Math.abs(gas / (1e19 * 1.380649e-23 * 300) - 1)).toBeLessThan(1e-4); // what lies outside 1e-4 … 1e8 s
    const ratio = spreadDesorption(100, shortest, longest, 300) / spreadDesorption(1000, shortest, longest, 300);
    expect(Math.abs(ratio / 10 - 1)).toBeLessThan(2e-3); // e^(−1000/1e6)
  });

  test('by any spread of sites obeys the bound', () => {
    for (const longest of [1e2, 1e4, 1e8])
      for (const time of [1, 60, 3600, 1e5])
        expect(spreadDesorption(time, 1, longest, 300)).toBeLessThan(waterBound(1, 1, 1, time, 300));
  });
});

test('water of the whole plant stays below the bound for the layers that it lets go', () => {
  // the pressure of its water, by rate over speed, against the bound for the published rate's own 16 layers
  const system = systemFrom({ pumps: [steadyPump('20000 l/s')], surfaces: [{ material: 'stainless steel' }] });
  const curve = pumpDown(system, { until: 1e-6 });
  for (const time of [600, 3600, 36000]) {
    const i = curve.time.findIndex((t) => t >= time);
    expect(curve.partial[1]![i]!).toBeLessThan(waterBound(16, 30, 20, curve.time[i]!, system.temperature));
  }
});
