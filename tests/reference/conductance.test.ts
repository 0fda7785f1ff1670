/** Conductances against published values and an independent solution of Clausing's equation. */
import { describe, expect, test } from 'vitest';
import {
  apertureConductance,
  bendLength,
  chokedSpeed,
  effectiveSpeed,
  inSeries,
  knudsenConductance,
  longTubeConductance,
  slipFactor,
  tubeConductance,
  tubeTransmission,
  viscosityPath,
  viscousConductance,
} from '../../engine/vacuum/conductance.ts';
import { airViscosity, meanSpeedOf } from '../../engine/vacuum/species.ts';
import { GASES } from '../../engine/gas/gases.ts';

const ROOM = 293.15;
const airSpeed = meanSpeedOf(GASES.air.molarMass, ROOM);
const viscosity = airViscosity(ROOM);
const LITRES = 1e3;

describe('transmission of a round tube', () => {
  // x = L/r. Own solution of Clausing's integral equation with 600 Gauss nodes, agreeing with the six digits of
  // R. J. Cole, Rarefied Gas Dynamics (1977) 261 (from memory) at 0.1, 0.5, 1, 2 and 5
  const TABLE: readonly (readonly [x: number, share: number])[] = [
    [0.05, 0.975612],
    [0.1, 0.952399],
    [0.2, 0.909215],
    [0.5, 0.801271],
    [0.6, 0.77115],
    [0.8, 0.717785],
    [1, 0.671984],
    [1.5, 0.581481],
    [2, 0.514231],
    [3, 0.420055],
    [4, 0.356573],
    [5, 0.310525],
    [6, 0.275439],
    [8, 0.225263],
    [20, 0.109321],
    [50, 0.04848],
  ];
  /** The approximation's own error, largest near x = 20 (6.3e-5). */
  const BERMAN = 1e-4;

  test.each(TABLE)('at L/r = %d is %d', (x, share) => {
    expect(Math.abs(tubeTransmission(x) - share)).toBeLessThan(BERMAN);
  });

  test('tends to 1 for an aperture and to 8r/3L for a long tube, without a jump', () => {
    expect(tubeTransmission(0)).toBe(1);
    // from one formula to the other at 1e-3: α = 1 − x/2 + x²/4 falls by 0.999e-6
    expect(Math.abs(tubeTransmission(0.000999) - tubeTransmission(0.001001) - 0.999e-6)).toBeLessThan(1e-10);
    // 8/(3x) is reached from below as ln x/x: 0.3 % short at x = 1e4 of the exact law, 0.1 % of this one
    expect(Math.abs((tubeTransmission(1e4) * 3e4) / 8 - 1)).toBeLessThan(2e-3);
  });

  test('lies within 0.65 % of a later formula', () => {
    // its own bound of 0.65 % and Berman's of 0.06 %: D. J. Santeler, J. Vac. Sci. Technol. A 4 (1986) 338; from memory
    for (let x = 0.01; x < 1000; x *= 1.3)
      expect(Math.abs(tubeTransmission(x) * (1 + ((3 * x) / 8) * (1 + 1 / (3 + (3 * x) / 7))) - 1)).toBeLessThan(
        0.0072,
      );
  });
});

describe('air at 20 °C', () => {
  // handbook constants are rounded to three digits, which allow half of the last one
  const ROUNDED = 5e-3;

  test('flows through an aperture at 11.6 l/s per square centimetre', () => {
    // K. Jousten, Handbook of Vacuum Technology, from memory
    expect(Math.abs((apertureConductance(1e-4, airSpeed) * LITRES) / 11.6 - 1)).toBeLessThan(ROUNDED);
    expect(Math.abs((apertureConductance(20e-4, airSpeed) * LITRES) / 231.5 - 1)).toBeLessThan(1e-3);
  });

  test('flows through a long tube at 12.1 d³/L', () => {
    // the same, d and L in cm
    expect(Math.abs((longTubeConductance(0.05, 1, airSpeed) * LITRES) / (12.1 * (125 / 100)) - 1)).toBeLessThan(
      ROUNDED,
    );
  });

  test('flows viscous at 135 d⁴ p̄/L', () => {
    // the same, p̄ in mbar
    const conductance = viscousConductance(0.1, 1, 100, viscosity) * LITRES;
    expect(Math.abs(conductance / (135 * (1e4 / 100)) - 1)).toBeLessThan(ROUNDED);
  });

  test('flows through short tubes as the transmission says', () => {
    // d × L in cm, l/s: apertures times the table above
    for (const [d, length, expected] of [
      [10, 100, 99.4],
      [10, 10, 467],
      [50, 50, 11685],
      [63, 20, 27461],
    ] as const)
      expect(Math.abs((tubeConductance(d / 100, length / 100, airSpeed) * LITRES) / expected - 1)).toBeLessThan(2e-3);
  });

  test('enters a choked aperture at about 20 l/s per square centimetre', () => {
    // K. Jousten, Handbook of Vacuum Technology, from memory
    expect(Math.abs((chokedSpeed(airSpeed) * LITRES) / 1e4 / 20 - 1)).toBeLessThan(0.01);
  });
});

describe('between molecular and viscous flow', () => {
  // Knudsen's formula with rounded constants for air at 20 °C: 135, 12.1, 192, 237 (M. Wutz, Theorie und Praxis
  // der Vakuumtechnik; from memory); constants of three digits and another mean free path: 1.5 %
  const CONSTANTS = 0.015;

  test.each([
    [1e-5, 120.6],
    [1e-3, 118.3],
    [1e-2, 234.0],
    [0.1, 1448],
    [1, 13598],
  ])('at %d mbar a tube of 10 cm by 100 cm passes %d l/s', (mbar, expected) => {
    const conductance = knudsenConductance(0.1, 1, 100 * mbar, viscosity, airSpeed) * LITRES;
    expect(Math.abs(conductance / expected - 1)).toBeLessThan(CONSTANTS);
  });

  test('the conductance has a minimum of 0.952 of the molecular one', () => {
    const molecular = longTubeConductance(0.1, 1, airSpeed);
    let least = Infinity;
    let at = 0;
    for (let p = 1e-3; p < 1; p *= 1.002) {
      const share = knudsenConductance(0.1, 1, p, viscosity, airSpeed) / molecular;
      if (share < least) [least, at] = [share, p];
    }
    expect(Math.abs(least - 0.952)).toBeLessThan(1e-3); // third digit of the published constants
    expect(Math.abs((at / 100) * 10 - 4.26e-3)).toBeLessThan(0.1e-3); // p̄·d in mbar·cm
  });

  test('the molecular part keeps 0.81 of itself in dense gas', () => {
    expect(Math.abs(slipFactor(1, 1e-6) - 0.81)).toBeLessThan(1e-3);
    expect(slipFactor(1, 1e9)).toBeCloseTo(1, 8);
  });

  test('the mean free path of air by viscosity is 6.7e-3 Pa·m', () => {
    // Pfeiffer Vacuum, Vacuum Technology Book, 1.2.5, λp of air; sources differ by 6 %
    expect(Math.abs(viscosityPath(1, viscosity, airSpeed) / 6.7e-3 - 1)).toBeLessThan(0.02);
  });
});

test('conductances in a row add their inverses, and a pump loses speed behind one', () => {
  expect(inSeries(3, 6)).toBeCloseTo(2, 12);
  expect(effectiveSpeed(3, 6)).toBeCloseTo(2, 12);
  expect(effectiveSpeed(3, Infinity)).toBe(3);
});

test('a quarter turn resists like two thirds of a diameter of tube', () => {
  expect(bendLength(0.1, Math.PI / 2)).toBeCloseTo(0.0665, 12);
});
