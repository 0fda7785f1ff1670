/** Index tables: what they answer, where they end, and the user's own from CSV. */
import { describe, expect, test } from 'vitest';
import { ALUMINIUM } from '../../../engine/film/materials/aluminium.ts';
import { ALUMINIUM_OXIDE } from '../../../engine/film/materials/aluminiumOxide.ts';
import { indexAt, rangeOf, tabulated } from '../../../engine/film/materials/indexTable.ts';
import { readIndexCsv } from '../../../engine/film/materials/indexCsv.ts';
import { OVERCOAT_MATERIALS, SUBSTRATE_MATERIALS } from '../../../engine/film/materials/materials.ts';

const MATERIALS = [
  ALUMINIUM,
  ALUMINIUM_OXIDE,
  ...Object.values(SUBSTRATE_MATERIALS),
  ...Object.values(OVERCOAT_MATERIALS),
];
/** Products of a few numbers near 1. */
const ROUNDING = 1e-14;

describe('an index table', () => {
  test('is linear between its rows', () => {
    const material = {
      name: 'test glass',
      tables: [
        tabulated(
          'a',
          'b',
          [
            [0.4, 1.6],
            [0.6, 1.5],
          ],
          [
            [0.3, 0],
            [0.9, 0.6],
          ],
        ),
      ],
    };
    const { n, k } = indexAt(material, 0.45e-6);
    expect(Math.abs(n - 1.575)).toBeLessThan(ROUNDING);
    expect(Math.abs(k - 0.15)).toBeLessThan(ROUNDING);
  });

  test('reaches only as far as both its columns', () => {
    const table = tabulated(
      'a',
      'b',
      [
        [0.4, 1.6],
        [0.6, 1.5],
      ],
      [
        [0.45, 0],
        [0.9, 0.6],
      ],
    );
    expect(table.range[0]).toBeCloseTo(0.45e-6, 15);
    expect(table.range[1]).toBeCloseTo(0.6e-6, 15);
  });

  test.each(MATERIALS.map((material) => [material.name, material] as const))(
    'of %s answers at its ends and refuses beyond them, with its range',
    (name, material) => {
      const [low, high] = rangeOf(material);
      for (const at of [low, high]) expect(indexAt(material, at).n).toBeGreaterThan(0);
      for (const at of [low * 0.999, high * 1.001]) {
        expect(() => indexAt(material, at)).toThrow(RangeError);
        expect(() => indexAt(material, at)).toThrow(new RegExp(`${name} is known from .* um; asked for`));
      }
      expect(() => indexAt(material, NaN)).toThrow(RangeError);
    },
  );

  test.each(MATERIALS.map((material) => [material.name, material] as const))('of %s has no gaps', (_name, material) => {
    const [low, high] = rangeOf(material);
    for (let i = 0; i <= 2000; i++) {
      const { n, k } = indexAt(material, low + ((high - low) * i) / 2000);
      expect(n).toBeGreaterThan(0);
      expect(k).toBeGreaterThanOrEqual(0);
    }
  });

  test.each(MATERIALS.flatMap(({ tables }) => tables.map((table) => [table.name, table] as const)))(
    'of %s names its source',
    (_name, table) => {
      expect(table.source).toMatch(/\d{4}/);
    },
  );

  test('the film stage can look from 0.2 to 2.5 µm with the usual materials', () => {
    for (const material of [ALUMINIUM, ALUMINIUM_OXIDE, SUBSTRATE_MATERIALS['fused silica'], OVERCOAT_MATERIALS.MgF2]) {
      expect(rangeOf(material)[0]).toBeLessThanOrEqual(0.2e-6);
      expect(rangeOf(material)[1]).toBeGreaterThanOrEqual(2.5e-6);
    }
  });
});

describe('an index table from CSV', () => {
  const read = (text: string) => readIndexCsv(text, 'lab coat', 'lab book 7');
  const faults = (text: string): readonly string[] => {
    const result = read(text);
    return result.ok ? [] : result.messages;
  };

  test('reads wavelength, n and k in the units of its second row', () => {
    const result = read('wavelength,n,k\nnm,,\n400,0.5,4.8\n600,1.2,7.2\n');
    if (!result.ok) throw new Error(result.messages.join('\n'));
    const { n, k } = indexAt(result.material, 500e-9);
    expect(Math.abs(n - 0.85)).toBeLessThan(ROUNDING);
    expect(Math.abs(k - 6)).toBeLessThan(ROUNDING);
    expect(() => indexAt(result.material, 601e-9)).toThrow('the index of lab coat is known from 0.4 to 0.6 um');
    expect(result.material.tables[0]?.source).toBe('lab book 7');
  });

  test('reads decimal commas between semicolons, a byte-order mark, columns in any order, and a clear material', () => {
    const result = read('\uFEFFn;wavelength\n-;µm\n1,52;0,4\n1,50;0,8\n\n');
    if (!result.ok) throw new Error(result.messages.join('\n'));
    const { n, k } = indexAt(result.material, 0.6e-6);
    expect(Math.abs(n - 1.51)).toBeLessThan(ROUNDING);
    expect(k).toBe(0);
  });

  test.each([
    ['nothing', '', 'expected a heading row, a unit row and at least two wavelengths'],
    ['one row', 'wavelength,n\nnm,\n400,1', 'expected a heading row, a unit row and at least two wavelengths'],
    ['an unknown column', 'wavelength,n,kk\nnm,,\n400,1,1\n500,1,1', 'row 1: unknown column "kk"; did you mean "k"?'],
    ['a missing column', 'wavelength,k\nnm,\n400,1\n500,1', 'row 1: expected the columns wavelength, n; missing n'],
    ['a column twice', 'wavelength,n,n\nnm,,\n400,1,1\n500,1,1', 'row 1: the column "n" stands twice'],
    ['no unit', 'wavelength,n\n,\n400,1\n500,1', 'row 2, column wavelength: expected a unit of length'],
    ['a wrong unit', 'wavelength,n\nkg,\n400,1\n500,1', 'row 2, column wavelength: expected a unit of length'],
    [
      'a unit over n',
      'wavelength,n\nnm,m\n400,1\n500,1',
      'row 2, column n: expected no unit, as it is a plain number; found "m"',
    ],
    ['too few units', 'wavelength,n\nnm\n400,1\n500,1', 'row 2: expected 2 units, as many as columns; found 1'],
    [
      'a word for a number',
      'wavelength,n\nnm,\n400,one\n500,1',
      'row 3, column n: expected a number greater than zero; found "one"',
    ],
    [
      'an empty cell',
      'wavelength,n\nnm,\n400,\n500,1',
      'row 3, column n: expected a number greater than zero; found nothing',
    ],
    ['an empty wavelength', 'wavelength,n\nnm,\n,1\n500,1', 'row 3, column wavelength: expected a number; found ""'],
    [
      'a word for a wavelength',
      'wavelength,n\nnm,\nred,1\n500,1',
      'row 3, column wavelength: expected a number of nm; found "red"',
    ],
    ['n of zero', 'wavelength,n\nnm,\n400,0\n500,1', 'row 3, column n: expected a number greater than zero; found "0"'],
    ['a negative k', 'wavelength,n,k\nnm,,\n400,1,1\n500,1,-3', 'row 4, column k: expected a number of zero or more'],
    [
      'a negative wavelength',
      'wavelength,n\nnm,\n-400,1\n500,1',
      'row 3, column wavelength: expected a wavelength greater than zero',
    ],
    [
      'falling wavelengths',
      'wavelength,n\nnm,\n500,1\n400,1',
      'row 4, column wavelength: expected wavelengths that rise from row to row; found "400"',
    ],
    [
      'a wavelength twice',
      'wavelength,n\nnm,\n500,1\n500,1',
      'row 4, column wavelength: expected wavelengths that rise',
    ],
    ['too few cells', 'wavelength,n\nnm,\n400\n500,1', 'row 3: expected 2 cells, as in the heading; found 1'],
    [
      'infinity',
      'wavelength,n\nnm,\n400,1e999\n500,1',
      'row 3, column n: expected a number greater than zero; found "1e999"',
    ],
  ])('with %s is refused', (_fault, text, message) => {
    expect(faults(text)).toContainEqual(expect.stringContaining(message));
  });

  test('tells all its faults at once', () => {
    expect(faults('wavelength,n,k\nnm,,\n400,0,1\n300,1,-1\n500,1')).toHaveLength(4);
  });

  test('that is far too long is refused', () => {
    const rows = Array.from({ length: 20_001 }, (_, i) => `${i + 1},1`).join('\n');
    expect(faults(`wavelength,n\nnm,\n${rows}`)).toEqual(['expected at most 20000 wavelengths; found 20001']);
  });
});
