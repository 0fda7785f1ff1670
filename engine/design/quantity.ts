/**
 * Quantities as people write them: a number with its unit.
 *
 * Units exist here, in reports and on screen; everywhere else numbers are SI.
 * Factors: SI Brochure, 9th edition (BIPM 2019) and NIST SP 811 (2008), appendix B.
 */

/** A kind of quantity: its units, each as value_SI = factor · value + offset. */
interface Dimension {
  readonly noun: string;
  readonly example: string;
  readonly units: Readonly<Record<string, readonly [factor: number, offset?: number]>>;
}

const TORR = 101325 / 760;
const INCH = 0.0254;
const FOOT = 12 * INCH;
const LITRE = 1e-3;

export const DIMENSIONS = {
  length: {
    noun: 'a length',
    example: '2.6 m',
    units: {
      m: [1],
      km: [1e3],
      cm: [1e-2],
      mm: [1e-3],
      um: [1e-6],
      '\u00b5m': [1e-6],
      '\u03bcm': [1e-6],
      nm: [1e-9],
      '\u00c5': [1e-10],
      '\u212b': [1e-10],
      angstrom: [1e-10],
      in: [INCH],
      '"': [INCH],
      inch: [INCH],
      ft: [FOOT],
      mil: [INCH / 1000],
    },
  },
  mass: {
    noun: 'a mass',
    example: '67 mg',
    units: { kg: [1], g: [1e-3], mg: [1e-6], ug: [1e-9], '\u00b5g': [1e-9], '\u03bcg': [1e-9], oz: [0.028349523125] },
  },
  angle: {
    noun: 'an angle',
    example: '30 deg',
    units: { rad: [1], mrad: [1e-3], deg: [Math.PI / 180], '°': [Math.PI / 180] },
  },
  pressure: {
    noun: 'a pressure',
    example: '1e-5 mbar',
    units: {
      Pa: [1],
      hPa: [100],
      kPa: [1e3],
      mbar: [100],
      ubar: [0.1],
      bar: [1e5],
      Torr: [TORR],
      mTorr: [TORR / 1000],
      micron: [TORR / 1000],
      atm: [101325],
      psi: [6894.757293168361],
    },
  },
  temperature: {
    noun: 'a temperature',
    example: '20 degC',
    units: {
      K: [1],
      degC: [1, 273.15],
      '°C': [1, 273.15],
      degF: [5 / 9, 273.15 - (32 * 5) / 9],
      '°F': [5 / 9, 273.15 - (32 * 5) / 9],
    },
  },
  density: {
    noun: 'a density',
    example: '2700 kg/m3',
    units: { 'kg/m3': [1], 'kg/m³': [1], 'kg/m^3': [1], 'g/cm3': [1e3], 'g/cm³': [1e3], 'g/cm^3': [1e3] },
  },
  fraction: {
    noun: 'a share',
    example: '10 %',
    units: { '%': [0.01], percent: [0.01], ppm: [1e-6] },
  },
  area: {
    noun: 'an area',
    example: '12 m2',
    units: {
      m2: [1],
      'm\u00b2': [1],
      'm^2': [1],
      cm2: [1e-4],
      'cm\u00b2': [1e-4],
      'cm^2': [1e-4],
      mm2: [1e-6],
      'mm\u00b2': [1e-6],
      in2: [INCH ** 2],
      'in\u00b2': [INCH ** 2],
      ft2: [FOOT ** 2],
      'ft\u00b2': [FOOT ** 2],
    },
  },
  volume: {
    noun: 'a volume',
    example: '18 m3',
    units: {
      m3: [1],
      'm\u00b3': [1],
      'm^3': [1],
      l: [LITRE],
      cm3: [1e-6],
      'cm\u00b3': [1e-6],
      ft3: [FOOT ** 3],
      'ft\u00b3': [FOOT ** 3],
    },
  },
  duration: {
    noun: 'a duration',
    example: '15 min',
    units: { s: [1], min: [60], h: [3600], d: [86400] },
  },
  volumeFlow: {
    noun: 'a volume flow',
    example: '31000 l/s',
    units: {
      'l/s': [LITRE],
      'm3/s': [1],
      'm\u00b3/s': [1],
      'm3/h': [1 / 3600],
      'm\u00b3/h': [1 / 3600],
      'l/min': [LITRE / 60],
      cfm: [FOOT ** 3 / 60],
      'ft3/min': [FOOT ** 3 / 60],
    },
  },
  throughput: {
    noun: 'a gas flow',
    example: '1e-3 mbar l/s',
    units: {
      'mbar l/s': [100 * LITRE],
      'mbar\u00b7l/s': [100 * LITRE],
      'mbar*l/s': [100 * LITRE],
      'Pa m3/s': [1],
      'Pa m\u00b3/s': [1],
      'Torr l/s': [TORR * LITRE],
      'Torr\u00b7l/s': [TORR * LITRE],
      sccm: [101325e-6 / 60],
    },
  },
  arealOutgassing: {
    noun: 'an outgassing rate',
    example: '1e-8 mbar l/(s cm2)',
    units: {
      'mbar l/(s cm2)': [1e6 * LITRE],
      'mbar l/(s cm\u00b2)': [1e6 * LITRE],
      'mbar l/s/cm2': [1e6 * LITRE],
      'Torr l/(s cm2)': [1e4 * TORR * LITRE],
      'Torr l/(s cm\u00b2)': [1e4 * TORR * LITRE],
      'Torr l/s/cm2': [1e4 * TORR * LITRE],
      'Pa m3/(s m2)': [1],
      'Pa m/s': [1],
    },
  },
  current: {
    noun: 'a current',
    example: '200 mA',
    units: { A: [1], mA: [1e-3], kA: [1e3] },
  },
  voltage: {
    noun: 'a voltage',
    example: '2 kV',
    units: { V: [1], kV: [1e3] },
  },
} as const satisfies Record<string, Dimension>;

export type DimensionName = keyof typeof DIMENSIONS;

/** A parsed quantity in SI, or the sentence that says what is wrong with it. */
export type Parsed =
  | { readonly ok: true; readonly value: number; readonly unit: string }
  | { readonly ok: false; readonly message: string };

const NUMBER_AND_UNIT = /^\s*([+-]?(?:\d+(?:[.,]\d*)?|[.,]\d+)(?:[eE][+-]?\d+)?)\s*(\S.*?)?\s*$/;
const AMBIGUOUS_COMMA = /^[+-]?[1-9]\d{0,2},\d{3}$/;

/** Longest text that is read as a quantity, characters. */
const MAX_TEXT = 200;

/** Shows a value inside a message, shortened; never throws. */
export function quoteValue(value: unknown): string {
  const text = value === undefined ? 'nothing' : typeof value === 'string' ? quoteText(value) : writtenOut(value);
  return text.length > 60 ? `${text.slice(0, 57)}…` : text;
}

function quoteText(text: string): string {
  return JSON.stringify(text.slice(0, 80));
}

/** A value as in a file; numbers that JSON does not know by their name. */
function writtenOut(value: unknown): string {
  if (typeof value !== 'object' || value === null) return String(value);
  try {
    return JSON.stringify(value) ?? 'an object';
  } catch {
    return Array.isArray(value) ? 'a list' : 'an object';
  }
}

function unitTable(dimension: DimensionName): Dimension['units'] {
  return DIMENSIONS[dimension].units;
}

/** Finds a unit by its exact spelling, else by its spelling regardless of case when only one fits. */
function findUnit(dimension: DimensionName, unit: string): string | undefined {
  const table = unitTable(dimension);
  if (Object.hasOwn(table, unit)) return unit;
  const matches = Object.keys(table).filter((name) => name.toLowerCase() === unit.toLowerCase());
  return matches.length === 1 ? matches[0] : undefined;
}

/** The other dimension that a unit belongs to, for the message "is a mass, not a length". */
function dimensionOf(unit: string): DimensionName | undefined {
  return (Object.keys(DIMENSIONS) as DimensionName[]).find((name) => findUnit(name, unit) !== undefined);
}

/**
 * Parses a quantity such as "2.6 m", "34 in", "0,9 m" or "1e-5 torr" into SI.
 *
 * A decimal comma is read as one, except where it could mean thousands ("1,000 mm"): that is an error.
 *
 * @param text what the user wrote; anything but a string is refused with a message
 * @returns the SI value, or a message that names what was expected and what was found
 */
export function parseQuantity(text: unknown, dimension: DimensionName): Parsed {
  const { noun, example } = DIMENSIONS[dimension];
  const expected = `expected ${noun} with its unit, such as "${example}"; found ${quoteValue(text)}`;
  if (typeof text !== 'string') return { ok: false, message: expected };
  const match = text.length > MAX_TEXT ? null : NUMBER_AND_UNIT.exec(text);
  if (!match) return { ok: false, message: expected };
  const [, digits = '', rawUnit] = match;
  if (AMBIGUOUS_COMMA.test(digits)) {
    return {
      ok: false,
      message: `"${digits}" could mean thousands or a decimal comma; write ${digits.replace(',', '.')} or ${digits.replace(',', '')}`,
    };
  }
  if (rawUnit === undefined) return { ok: false, message: `${expected} (the unit is missing)` };
  const unit = findUnit(dimension, rawUnit);
  if (unit === undefined) {
    const other = dimensionOf(rawUnit);
    const reason = other
      ? `"${rawUnit}" is a unit of ${DIMENSIONS[other].noun.replace(/^an? /, '')}`
      : `the unit ${quoteValue(rawUnit)} is unknown; known are ${knownUnits(dimension)}`;
    return { ok: false, message: `${expected} (${reason})` };
  }
  const [factor, offset = 0] = unitTable(dimension)[unit] ?? [1];
  const value = Number(digits.replace(',', '.')) * factor + offset;
  if (!Number.isFinite(value)) return { ok: false, message: `${expected} (the number is too large)` };
  return { ok: true, value, unit };
}

/** The units that a dimension is written in, as a list for messages and forms; spellings that look alike once. */
export function knownUnits(dimension: DimensionName): string {
  return [...new Set(Object.keys(unitTable(dimension)).map((unit) => unit.normalize('NFKC')))].join(', ');
}

/** Whether a text is a unit of this dimension, by the rules of parseQuantity. */
export function isUnit(dimension: DimensionName, text: string): boolean {
  return findUnit(dimension, text) !== undefined;
}

/**
 * An SI value in a unit: the number only.
 *
 * @throws RangeError if the dimension has no such unit
 */
export function inUnit(value: number, dimension: DimensionName, unit: string): number {
  const entry = unitTable(dimension)[findUnit(dimension, unit) ?? ''];
  if (!entry) throw new RangeError(`${DIMENSIONS[dimension].noun} has no unit ${quoteValue(unit)}`);
  const [factor, offset = 0] = entry;
  return (value - offset) / factor;
}

/**
 * Writes an SI value as a quantity that parses back to it within `digits` significant digits.
 *
 * @throws RangeError if the dimension has no such unit
 */
export function formatQuantity(value: number, dimension: DimensionName, unit: string, digits = 12): string {
  return `${Number(inUnit(value, dimension, unit).toPrecision(digits))} ${unit}`;
}
