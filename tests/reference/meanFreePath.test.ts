/** Mean free paths against handbooks. */
import { describe, expect, test } from 'vitest';
import {
  ALUMINIUM_DIAMETER,
  atomFreePath,
  CROSS_SECTION_DOUBT,
  DEFAULT_VAPOUR,
  gasFreePath,
  relativeSpeed,
} from '../../engine/gas/freePath.ts';
import { meanVapourSpeed } from '../../engine/gas/gasReport.ts';
import { pureGas, type GasName } from '../../engine/gas/gases.ts';

const MBAR = 100;
const TORR = 101325 / 760;

/**
 * CRC Handbook of Chemistry and Physics, 100th edition, as on a public page of mean free paths: nm at 298.15 K and 100 kPa.
 * The table prints three digits.
 */
const CRC: readonly (readonly [GasName, number])[] = [
  ['N2', 67.6],
  ['O2', 73.6],
  ['Ar', 72.2],
  ['He', 200],
  ['H2', 126],
];
const THREE_DIGITS = 5e-3;
/** Half of the last digit of the rules of thumb. */
const THUMB = 0.05;
/** Two printed digits, and a middle of the bracket by number instead of by cross-section. */
const TWO_DIGITS = 0.012;
const MIDDLE = 0.02;
const FOUR_DECIMALS = 1e-4;

test.each(CRC)('of %s at 298.15 K and 100 kPa is %d nm', (name, nm) => {
  expect(Math.abs(gasFreePath(pureGas(name, 1e5, 298.15)) / (nm * 1e-9) - 1)).toBeLessThan(THREE_DIGITS);
});

/**
 * Mean free path times pressure at 0 °C, m·Pa: know-how-book.pfeiffer-vacuum.com, 1.2.5. Handbooks differ by ±6 % among
 * each other. Hard spheres of the size at 25 °C are too small at 0 °C by about 2 % in the diameter, which adds 4 %.
 * Its entry for air, 6.7e-3, is a value at 20 °C, and is taken so.
 */
const AT_ZERO: readonly (readonly [GasName, number, number])[] = [
  ['H2', 273.15, 11.5e-3],
  ['N2', 273.15, 5.9e-3],
  ['O2', 273.15, 6.5e-3],
  ['He', 273.15, 17.5e-3],
  ['Ar', 273.15, 6.4e-3],
  ['air', 293.15, 6.7e-3],
];
const HANDBOOKS = 0.06;

test.each(AT_ZERO)('times pressure of %s at %d K is %d m·Pa', (name, temperature, product) => {
  expect(Math.abs(gasFreePath(pureGas(name, 1, temperature)) / product - 1)).toBeLessThan(HANDBOOKS);
});

test('of air follows the rules of thumb', () => {
  // common practice: 5e-3 cm·Torr, 6.7e-5 m·mbar at 20 °C, one digit and two
  expect(Math.abs((gasFreePath(pureGas('air', TORR, 293.15)) * 100) / 5e-3 - 1)).toBeLessThan(THUMB);
  expect(Math.abs(gasFreePath(pureGas('air', 1e-4 * MBAR, 293.15)) / 0.67 - 1)).toBeLessThan(THUMB);
});

test('of water lies between those of its diameters in the books, 4.45 and 4.7 Å', () => {
  // 4.6e-3 m·Pa from viscosity; the larger diameter, from memory, gives (4.45/4.7)² of it
  const product = gasFreePath(pureGas('H2O', 1, 293.15));
  expect(product).toBeLessThan(4.65e-3);
  expect(product).toBeGreaterThan(4.6e-3 * (4.45 / 4.7) ** 2);
});

describe('of a foreign atom', () => {
  test.each([
    [0.5, 0.4098],
    [1, 0.6795],
    [2, 0.889],
    [4, 0.9697],
  ])('with s = %d is %d/nσ', (s, expected) => {
    // closed form and a brute-force Monte Carlo of 4e6 relative speeds worked out apart from this code; four digits
    expect(Math.abs(s / relativeSpeed(s) - expected)).toBeLessThan(FOUR_DECIMALS);
  });

  test.each([
    ['N2', 9.0e-3, 11.4e-3],
    ['Ar', 9.4e-3, 12.0e-3],
    ['O2', 9.4e-3, 12.0e-3],
  ] as [GasName, number, number][])(
    'of aluminium from 1500 K in %s lies in the bracket that its two radii span',
    (name, low, high) => {
      // diameters 2.86 Å (metallic) to 3.68 Å (van der Waals), from memory: bracket worked out apart from this code, m·Pa, two digits
      const paths = [3.68e-10, ALUMINIUM_DIAMETER, 2.86e-10].map((diameter) =>
        atomFreePath(pureGas(name, 1, 293.15), meanVapourSpeed(DEFAULT_VAPOUR), { ...DEFAULT_VAPOUR, diameter }),
      );
      expect(Math.abs(paths[0]! / low - 1)).toBeLessThan(TWO_DIGITS);
      expect(Math.abs(paths[2]! / high - 1)).toBeLessThan(TWO_DIGITS);
      expect(Math.abs(paths[1]! / Math.sqrt(low * high) - 1)).toBeLessThan(MIDDLE);
      expect(high / paths[1]!).toBeLessThan(1 + CROSS_SECTION_DOUBT);
      expect(paths[1]! / low).toBeLessThan(1 + CROSS_SECTION_DOUBT);
    },
  );
});
