import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { formatQuantity, inUnit, knownUnits, parseQuantity, type DimensionName } from '../../../engine/index.ts';
import { DIMENSIONS, quoteValue } from '../../../engine/design/quantity.ts';

/** Units with seven published digits: half of the last one, relative to the smallest mantissa. */
const SEVEN_DIGITS = 5e-7;
/** One product and one sum of doubles, on each side. */
const ROUNDING = 4 * Number.EPSILON;
/** formatQuantity writes 12 significant digits: half of the last, plus rounding. */
const TWELVE_DIGITS = 5.1e-12;
const SEED = { seed: 20240611, numRuns: 400 };

function si(text: string, dimension: DimensionName): number {
  const parsed = parseQuantity(text, dimension);
  if (!parsed.ok) throw new Error(parsed.message);
  return parsed.value;
}

function complaint(text: unknown, dimension: DimensionName): string {
  const parsed = parseQuantity(text, dimension);
  return parsed.ok ? '' : parsed.message;
}

const allUnits = (Object.keys(DIMENSIONS) as DimensionName[]).flatMap((dimension) =>
  Object.keys(DIMENSIONS[dimension].units).map((unit) => [dimension, unit] as const),
);

describe('conversion factors', () => {
  // exact by definition: NIST SP 811 (2008), appendix B.8 (bold factors) and B.6; from memory of the tables
  test.each([
    ['1 in', 'length', 0.0254],
    ['1 ft', 'length', 0.3048],
    ['1 mil', 'length', 2.54e-5],
    ['1 Å', 'length', 1e-10],
    ['1 oz', 'mass', 0.028349523125], // avoirdupois: 1 lb = 0.453 592 37 kg exactly, 16 oz
    ['1 atm', 'pressure', 101325],
    ['1 bar', 'pressure', 1e5],
    ['1 mbar', 'pressure', 100],
    ['760 Torr', 'pressure', 101325], // SP 811, B.8: torr = 101 325/760 Pa
    ['180 deg', 'angle', Math.PI],
    ['1 g/cm3', 'density', 1000],
    ['0 degC', 'temperature', 273.15], // SI Brochure, 9th edition (2019), 2.3.1: t/°C = T/K − 273.15
    ['32 degF', 'temperature', 273.15],
    ['212 degF', 'temperature', 373.15],
    ['-40 degF', 'temperature', 233.15],
    ['1 %', 'fraction', 0.01],
    ['1 ppm', 'fraction', 1e-6],
    ['1 cm2', 'area', 1e-4],
    ['1 in2', 'area', 6.4516e-4],
    ['1 ft2', 'area', 0.09290304],
    ['1 l', 'volume', 1e-3],
    ['1 ft3', 'volume', 0.028316846592],
    ['1 d', 'duration', 86400],
    ['1 l/s', 'volumeFlow', 1e-3],
    ['3600 m3/h', 'volumeFlow', 1],
    ['60 cfm', 'volumeFlow', 0.028316846592],
    ['1 mbar l/s', 'throughput', 0.1],
    ['760 Torr l/s', 'throughput', 101.325],
    ['60 sccm', 'throughput', 0.101325], // a cubic centimetre a minute at 0 °C and 101 325 Pa
    ['1 mbar l/(s cm2)', 'arealOutgassing', 1e3],
    ['760 Torr l/(s cm2)', 'arealOutgassing', 1013250],
    ['1 mA', 'current', 1e-3],
    ['1 kV', 'voltage', 1e3],
  ] as const)('%s is exact', (text, dimension, expected) => {
    expect(Math.abs(si(text, dimension) / expected - 1)).toBeLessThanOrEqual(ROUNDING);
  });

  // NIST SP 811 (2008), appendix B.8, seven digits; from memory of the table
  test.each([
    ['1 Torr', 'pressure', 1.333224e2],
    ['1 mTorr', 'pressure', 1.333224e-1],
    ['1 micron', 'pressure', 1.333224e-1], // micrometre of mercury
    ['1 psi', 'pressure', 6.894757e3],
    ['1 oz', 'mass', 2.834952e-2],
    ['1 deg', 'angle', 1.745329e-2],
    ['1 cfm', 'volumeFlow', 4.719474e-4],
  ] as const)('%s agrees with seven published digits', (text, dimension, expected) => {
    expect(Math.abs(si(text, dimension) / expected - 1)).toBeLessThanOrEqual(SEVEN_DIGITS);
  });

  test('a degree Fahrenheit is 5/9 of a kelvin', () => {
    // NIST SP 811 (2008), B.8: T/K = (t/°F + 459.67)/1.8
    for (const t of [-459.67, -40, 0, 32, 68, 212, 1220])
      expect(Math.abs(si(`${t} degF`, 'temperature') - (t + 459.67) / 1.8)).toBeLessThanOrEqual(1000 * ROUNDING);
  });

  test('SI prefixes are powers of ten', () => {
    // SI Brochure, 9th edition (2019), table 7
    const prefixes = { km: 1e3, cm: 1e-2, mm: 1e-3, um: 1e-6, µm: 1e-6, μm: 1e-6, nm: 1e-9 };
    for (const [unit, factor] of Object.entries(prefixes))
      expect(Math.abs(si(`1 ${unit}`, 'length') / factor - 1), unit).toBeLessThanOrEqual(ROUNDING);
  });
});

describe('round trip', () => {
  test('every unit of every dimension parses back what it writes', () => {
    fc.assert(
      fc.property(
        fc.constantFrom(...allUnits),
        fc.double({ min: 1e-9, max: 1e9, noNaN: true }),
        fc.boolean(),
        ([dimension, unit], size, isNegative) => {
          const shown = isNegative ? -size : size;
          const value = si(`${shown} ${unit}`, dimension);
          const again = si(formatQuantity(value, dimension, unit), dimension);
          // a temperature near absolute zero loses what its offset takes
          const scale = Math.max(Math.abs(value), Math.abs(again), dimension === 'temperature' ? 300 : 0);
          expect(Math.abs(again - value)).toBeLessThanOrEqual(TWELVE_DIGITS * scale);
        },
      ),
      SEED,
    );
  });

  test('inUnit undoes parsing', () => {
    expect(inUnit(si('34 in', 'length'), 'length', 'in')).toBeCloseTo(34, 12);
    expect(inUnit(si('68 degF', 'temperature'), 'temperature', 'degF')).toBeCloseTo(68, 10);
    expect(() => inUnit(1, 'length', 'kg')).toThrow('a length has no unit "kg"');
  });

  test('few digits are rounded, not cut', () => {
    expect(formatQuantity(1.23456e-7, 'length', 'nm', 3)).toBe('123 nm');
    expect(formatQuantity(1.2399e-7, 'length', 'nm', 3)).toBe('124 nm');
  });
});

describe('the way numbers are written', () => {
  test.each([
    ['2.6m', 2.6],
    ['  2.6   m  ', 2.6],
    ['2.6e0 m', 2.6],
    ['+2.6 m', 2.6],
    ['-2.6 m', -2.6],
    ['.5 m', 0.5],
    ['2. m', 2],
    ['2.6E+3 mm', 2.6],
    ['2,6 m', 2.6],
    ['0,900 m', 0.9],
    ['1234,567 mm', 1.234567],
    ['1,5e3 mm', 1.5],
    ['34"', 34 * 0.0254],
  ])('"%s" is read', (text, expected) => {
    expect(si(text, 'length')).toBeCloseTo(expected, 12);
  });

  test.each(['1,000 mm', '12,500 mm', '-999,999 mm'])('"%s" could mean two things, so it is refused', (text) => {
    expect(complaint(text, 'length')).toMatch(/could mean thousands or a decimal comma; write [-\d.]+ or \d*/);
  });

  test.each(['', ' ', 'm', 'two m', 'NaN m', 'Infinity m', '0x10 m', '1e m', '--1 m', '1.2.3 m', '1 000 mm', '1;5 m'])(
    '"%s" is refused',
    (text) => {
      expect(complaint(text, 'length')).toContain('expected a length with its unit, such as "2.6 m"; found');
    },
  );

  test('what follows a unit after many blanks is not lost', () => {
    expect(complaint(`1 m${' '.repeat(300)}x`, 'length')).toContain('expected a length');
  });

  test('no text of any kind makes the parser throw or give a number that is not finite', () => {
    fc.assert(
      fc.property(fc.string({ unit: 'binary', maxLength: 40 }), fc.constantFrom(...allUnits), (text, [dimension]) => {
        const parsed = parseQuantity(text, dimension);
        expect(parsed.ok ? Number.isFinite(parsed.value) : parsed.message.length > 0).toBe(true);
      }),
      SEED,
    );
  });
});

describe('units', () => {
  test('the case of a unit does not matter where only one fits', () => {
    expect(si('1 MBAR', 'pressure')).toBe(100);
    expect(si('1 torr', 'pressure')).toBe(si('1 Torr', 'pressure'));
    expect(si('1 PA', 'pressure')).toBe(1);
    expect(si('20 DEGC', 'temperature')).toBe(si('20 degC', 'temperature'));
  });

  test('no two units of a dimension differ by case alone', () => {
    for (const [dimension, unit] of allUnits) {
      const rivals = Object.keys(DIMENSIONS[dimension].units).filter(
        (other) => other.toLowerCase() === unit.toLowerCase() && other.normalize('NFKC') !== unit.normalize('NFKC'),
      );
      expect(rivals, unit).toEqual([]);
    }
  });

  test('a missing unit is said to be missing', () => {
    expect(complaint('2.6', 'length')).toBe(
      'expected a length with its unit, such as "2.6 m"; found "2.6" (the unit is missing)',
    );
    expect(complaint(2.6, 'length')).toBe('expected a length with its unit, such as "2.6 m"; found 2.6');
  });

  test('an unknown unit is named, with the known ones', () => {
    expect(complaint('3 cubit', 'length')).toContain('(the unit "cubit" is unknown; known are m, km, cm, mm, um');
    expect(complaint('3 constructor', 'length')).toContain('the unit "constructor" is unknown');
  });

  test('a unit of another kind is named as such', () => {
    expect(complaint('67 mg', 'length')).toContain('("mg" is a unit of mass)');
    expect(complaint('2 m', 'mass')).toContain('("m" is a unit of length)');
    expect(complaint('2 Torr', 'temperature')).toContain('("Torr" is a unit of pressure)');
  });

  test('the list of known units shows no spelling twice', () => {
    for (const dimension of Object.keys(DIMENSIONS) as DimensionName[]) {
      const units = knownUnits(dimension).split(', ');
      expect(new Set(units).size).toBe(units.length);
      for (const unit of units) expect(parseQuantity(`1 ${unit}`, dimension).ok, unit).toBe(true);
    }
  });
});

test('a value inside a message stays short', () => {
  expect(quoteValue('x'.repeat(1e6)).length).toBeLessThanOrEqual(60);
  expect(quoteValue(Array.from({ length: 1e5 }, () => 1)).length).toBeLessThanOrEqual(60);
  expect([quoteValue(undefined), quoteValue(null), quoteValue(NaN), quoteValue(5n)]).toEqual([
    'nothing',
    'null',
    'NaN',
    '5',
  ]);
});
