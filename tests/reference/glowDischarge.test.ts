/** Doses of a glow discharge against arithmetic and handbook figures. */
import { expect, test } from 'vitest';
import { glowDose, GLOW_WINDOW, type GlowSettings } from '../../engine/vacuum/glow.ts';

const usual: GlowSettings = { pressure: 5, gas: 'air', voltage: 2000, current: 1, area: 5, duration: 600 };
const TORR = 133.3224;

test('1 mA·s/cm² is 6.2415e15 ions/cm²', () => {
  // 1 mC over the elementary charge, SI Brochure (2019)
  const { ions } = glowDose({ ...usual, current: 1e-3, area: 1e-4, duration: 1 });
  expect(Math.abs(ions / 1e4 / 6.2415e15 - 1)).toBeLessThan(1e-5);
});

test('0.02 mA/cm² for 10 min gives 7.5e16 ions/cm²', () => {
  const { ions, currentDensity } = glowDose({ ...usual, current: 0.02e-3, area: 1e-4 });
  expect(currentDensity).toBeCloseTo(0.2, 12);
  expect(Math.abs(ions / 1e4 / 7.49e16 - 1)).toBeLessThan(1e-3);
});

test('energy is power times time over the area', () => {
  const { energy, power } = glowDose(usual);
  expect(power).toBe(2000);
  expect(energy).toBeCloseTo((2000 * 600) / 5, 9);
});

test('the cathode fall at 5 Pa is 6.7 to 8.3 cm thick', () => {
  // p·d of aluminium 0.25 Torr·cm in air (to 0.31 in nitrogen); A. von Engel, J. D. Cobine, ±20 %, from memory
  expect(Math.abs(glowDose(usual).fallThickness / 0.067 - 1)).toBeLessThan(0.01);
  const argon = glowDose({ ...usual, gas: 'Ar' }).fallThickness;
  expect(Math.abs((argon * 5) / (0.29e-2 * TORR) - 1)).toBeLessThan(1e-6);
});

test('the mean free path at 5 Pa is 1.3 mm', () => {
  // λp of nitrogen 6.65e-3 m·Pa at 20 °C, CRC hard spheres
  expect(Math.abs(glowDose(usual).freePath / 1.33e-3 - 1)).toBeLessThan(0.02);
});

test('the usual window is 25 to 100 mTorr, and a quarter of an hour lies within the usual time', () => {
  // L. Holland (1956), J. Strong (1938); ranges, from memory; rounded to whole pascals
  expect(GLOW_WINDOW.pressure[0]).toBeCloseTo(0.025 * TORR, 0);
  expect(Math.abs(GLOW_WINDOW.pressure[1] / (0.1 * TORR) - 1)).toBeLessThan(0.13);
  expect(glowDose({ ...usual, duration: 900 }).findings.every(({ tone }) => tone === 'good')).toBe(true);
});
