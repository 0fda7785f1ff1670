/** Molecules at surfaces, monolayers and arrival ratios against handbooks. */
import { describe, expect, test } from 'vitest';
import { AVOGADRO, BOLTZMANN } from '../../engine/gas/constants.ts';
import { arrivalRatio, atomsInFilm, gettered, steadyPace } from '../../engine/gas/contamination.ts';
import { componentsOf, GASES, pureGas, type GasName } from '../../engine/gas/gases.ts';
import { impingementRate, monolayerTime } from '../../engine/gas/impingement.ts';
import { meanSpeed } from '../../engine/gas/speeds.ts';

const TORR = 101325 / 760;
const MBAR = 100;
const ROOM = 293.15;
const CM2 = 1e-4;
/** Four printed digits, of molar masses rounded once more. */
const FOUR_DIGITS = 2e-4;
const THREE_DIGITS = 3e-3;
const TWO_DIGITS = 0.01;
const SIX_DIGITS = 1e-5;
const FIVE_DIGITS = 5e-5;
const ROUNDING = 1e-12;
const near = (actual: number, expected: number, tolerance: number): void =>
  expect(Math.abs(actual / expected - 1)).toBeLessThan(tolerance);

/**
 * At 20 °C, worked out apart from this code from Φ = p/√(2πmkT): mean speed m/s, molecules per cm² and s at 1e-6 Torr
 * and 1e-6 mbar, seconds until 1e15 have struck a cm² at 1e-6 Torr.
 */
const TABLE: readonly (readonly [GasName, speed: number, torr: number, mbar: number, seconds: number])[] = [
  ['N2', 470.71, 3.876e14, 2.908e14, 2.58],
  ['air', 462.91, 3.812e14, 2.859e14, 2.62],
  ['O2', 440.42, 3.627e14, 2.72e14, 2.76],
  ['H2O', 586.96, 4.834e14, 3.626e14, 2.07],
  ['Ar', 394.17, 3.246e14, 2.435e14, 3.08],
];

test.each(TABLE)('%s at 20 °C: speed, impingement and time for a monolayer', (name, speed, torr, mbar, seconds) => {
  near(meanSpeed(ROOM, GASES[name].molarMass / AVOGADRO), speed, FOUR_DIGITS);
  near(impingementRate(pureGas(name, 1e-6 * TORR, ROOM)) * CM2, torr, FOUR_DIGITS);
  near(impingementRate(pureGas(name, 1e-6 * MBAR, ROOM)) * CM2, mbar, FOUR_DIGITS);
  near(monolayerTime(pureGas(name, 1e-6 * TORR, ROOM)), seconds, THREE_DIGITS);
});

test('the constant of the textbook: 3.513e22 p[Torr]/√(M T) per cm² and second', () => {
  // J. F. O'Hanlon, A User's Guide to Vacuum Technology, from memory; 3.51275e22 worked out from the exact constants
  for (const name of ['H2', 'O2', 'Ar'] as const) {
    const rate = impingementRate(pureGas(name, TORR, 400)) * CM2;
    near(rate * Math.sqrt(GASES[name].molarMass * 1e3 * 400), 3.51275e22, SIX_DIGITS);
    near(rate * Math.sqrt(GASES[name].molarMass * 1e3 * 400), 3.513e22, FOUR_DIGITS);
  }
});

test('the rule of vacuum practice: at 1e-6 Torr a monolayer takes a few seconds', () => {
  // common practice, no source
  for (const name of ['N2', 'O2', 'H2O'] as const) {
    const time = monolayerTime(pureGas(name, 1e-6 * TORR, ROOM));
    expect(time).toBeGreaterThan(1);
    expect(time).toBeLessThan(4);
  }
});

test('a gas at 1e-6 mbar and 20 °C has 2.4707e10 molecules in a cubic centimetre', () => {
  // worked out apart from this code: 1e-4 Pa/(k · 293.15 K)
  const [part] = componentsOf(pureGas('N2', 1e-6 * MBAR, ROOM));
  near(part!.density * 1e-6, 2.4707e10, FIVE_DIGITS);
  near(part!.density * BOLTZMANN * ROOM, 1e-4, ROUNDING);
});

describe('gas for each aluminium atom', () => {
  test('a film of 1 nm/s takes 6.0263e15 atoms per cm² and second', () => {
    near(atomsInFilm(1e-9, 2700) * CM2, 6.0263e15, FOUR_DIGITS);
  });

  // worked out apart from this code; two printed digits
  test.each([
    [1e-7, 1, 8.0e-3, 6.0e-3],
    [1e-6, 1, 8.0e-2, 6.0e-2],
    [1e-6, 10, 8.0e-3, 6.0e-3],
    [1e-5, 10, 8.0e-2, 6.0e-2],
    [1e-5, 50, 1.6e-2, 1.2e-2],
    [1e-4, 1, 8.0, 6.0],
  ])('at %d Torr and %d nm/s: water %d, oxygen %d', (torr, rate, water, oxygen) => {
    const ratio = (name: 'H2O' | 'O2'): number => arrivalRatio(pureGas(name, torr * TORR, ROOM), rate * 1e-9, 2700);
    near(ratio('H2O'), water, TWO_DIGITS);
    near(ratio('O2'), oxygen, TWO_DIGITS);
  });

  test('the textbook’s form gives the same: C = 5.83e-2 p M_a/(√(M_g T) ρ ḋ)', () => {
    // M. Ohring, Materials Science of Thin Films, from memory: Torr, g/mol, g/cm³, cm/s
    const textbook = (5.83e-2 * 1e-7 * 26.98154) / (Math.sqrt(31.9988 * 300) * 2.7 * 1e-8);
    near(arrivalRatio(pureGas('O2', 1e-7 * TORR, 300), 1e-10, 2700), textbook, THREE_DIGITS);
  });

  test('10 m² of fresh film could pump 1.47e6 l/s of water', () => {
    // worked out apart from this code: 14.67 l/s for each cm²
    near(gettered(pureGas('H2O', 1e-3, ROOM), 10, steadyPace(1)).speed * 1e3, 1.467e6, THREE_DIGITS);
  });
});
