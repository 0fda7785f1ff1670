/** Complex refractive indices against wavelength, each from a named source and valid over a stated range only. */

/** One published index: n + ik, the sign of k being that of a wave exp(+i·2πNz/λ − iωt) that fades along z. */
export interface IndexTable {
  readonly name: string;
  /** who measured it, and where it is published */
  readonly source: string;
  /** shortest and longest vacuum wavelength, m; outside there is no value */
  readonly range: readonly [number, number];
  /** @param wavelength [m] within the range */
  readonly n: (wavelength: number) => number;
  /** @param wavelength [m] within the range */
  readonly k: (wavelength: number) => number;
}

/** A material: its tables in order of preference; a wavelength is answered by the first one that reaches it. */
export interface Material {
  readonly name: string;
  readonly tables: readonly IndexTable[];
}

/** Complex index n + ik. */
export interface ComplexIndex {
  readonly n: number;
  readonly k: number;
}

/** A column of a table: rising wavelengths in µm as published, and values. */
export type Column = readonly (readonly [wavelength_um: number, value: number])[];

const MICROMETRE = 1e-6;

/** Value of a column, linear in the wavelength between rows; never beyond the first and last row. */
function interpolated(column: Column): (wavelength: number) => number {
  const wavelengths = Float64Array.from(column, ([at]) => at * MICROMETRE);
  const values = Float64Array.from(column, ([, value]) => value);
  return (wavelength) => {
    let low = 0;
    let high = wavelengths.length - 1;
    while (high - low > 1) {
      const middle = (low + high) >> 1;
      if (wavelengths[middle]! <= wavelength) low = middle;
      else high = middle;
    }
    const share = (wavelength - wavelengths[low]!) / (wavelengths[high]! - wavelengths[low]!);
    return values[low]! + share * (values[high]! - values[low]!);
  };
}

/** A table from rows; without a column for k the material is clear over the whole range. */
export function tabulated(name: string, source: string, n: Column, k?: Column): IndexTable {
  const columns = k ? [n, k] : [n];
  const low = Math.max(...columns.map((column) => column[0]![0]));
  const high = Math.min(...columns.map((column) => column.at(-1)![0]));
  return {
    name,
    source,
    range: [low * MICROMETRE, high * MICROMETRE],
    n: interpolated(n),
    k: k ? interpolated(k) : () => 0,
  };
}

/** A table whose rows carry n and k together. */
export function tabulatedPairs(
  name: string,
  source: string,
  rows: readonly (readonly [wavelength_um: number, n: number, k: number])[],
): IndexTable {
  return tabulated(
    name,
    source,
    rows.map(([at, n]) => [at, n]),
    rows.map(([at, , k]) => [at, k]),
  );
}

/**
 * A clear glass by Sellmeier's formula.
 *
 *     n² = 1 + Σ B λ² / (λ² − C), λ in µm
 *
 * @param range [µm]
 * @param terms B [1] and C [µm²] of each resonance
 */
export function sellmeier(
  name: string,
  source: string,
  range: readonly [number, number],
  terms: readonly (readonly [strength: number, resonance: number])[],
): IndexTable {
  return {
    name,
    source,
    range: [range[0] * MICROMETRE, range[1] * MICROMETRE],
    n: (wavelength) => {
      const square = (wavelength / MICROMETRE) ** 2;
      return Math.sqrt(terms.reduce((sum, [b, c]) => sum + (b * square) / (square - c), 1));
    },
    k: () => 0,
  };
}

/** Rounding of limits that went through a unit and back. */
const SAME = 1e-12;

const reaches = ({ range: [low, high] }: IndexTable, wavelength: number): boolean =>
  wavelength >= low * (1 - SAME) && wavelength <= high * (1 + SAME);

/** Shortest and longest wavelength that a material's tables answer, m. */
export function rangeOf({ tables }: Material): readonly [number, number] {
  return [Math.min(...tables.map(({ range }) => range[0])), Math.max(...tables.map(({ range }) => range[1]))];
}

const micrometres = (metres: number): string => Number((metres / MICROMETRE).toPrecision(5)).toString();

/**
 * Complex index of a material.
 *
 * @param wavelength [m] in vacuum
 * @throws RangeError outside the material's tables, with their range: no value is made up
 */
export function indexAt(material: Material, wavelength: number): ComplexIndex {
  const table = material.tables.find((candidate) => reaches(candidate, wavelength));
  if (!table) {
    const [low, high] = rangeOf(material);
    throw new RangeError(
      `the index of ${material.name} is known from ${micrometres(low)} to ${micrometres(high)} um; asked for ${micrometres(wavelength)} um`,
    );
  }
  return { n: table.n(wavelength), k: table.k(wavelength) };
}
