import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { readReadings, type ReadingColumn } from '../../viewer/format/readings.ts';

const SEED = 20_262;
/** A unit's factor and the rounding of a written number. */
const ROUNDING = 1e-12;

const COLUMNS: readonly ReadingColumn[] = [
  { name: 'witness', holds: 'text', isNeeded: true },
  { name: 'thickness', holds: 'length', isNeeded: true },
  { name: 'run', holds: 'number', isNeeded: false },
];

const TABLE = 'witness,thickness,run\n,nm,\nrim 0,118,3\nhub,72.5,\n';

describe('pasted readings', () => {
  test.each([
    ['names and units in rows of their own', TABLE],
    ['tabs', TABLE.replaceAll(',', '\t')],
    ['semicolons and a decimal comma', TABLE.replaceAll(',', ';').replace('72.5', '72,5')],
    ['a unit in the heading', 'Witness;Thickness (nm);Run\nrim 0;118;3\nhub;72.5;'],
    ['a unit in square brackets', 'witness,thickness [nm],run\nrim 0,118,3\nhub,72.5,'],
    ['units in the cells', 'witness,thickness,run\nrim 0,1180 Å,3\nhub,0.0725 um,'],
    ['no heading', 'rim 0,118 nm,3\nhub,72.5 nm,\n'],
    ['empty lines, blanks and a byte order mark', `\uFEFF${TABLE.replaceAll('\n', ' \n\n')}`],
    ['lines that end as on another system', TABLE.replaceAll('\n', '\r\n')],
  ])('are the same with %s', (_, text) => {
    const { readings, faults } = readReadings(text, COLUMNS);
    expect(faults).toEqual([]);
    expect(readings).toEqual([
      { witness: 'rim 0', thickness: expect.closeTo(118e-9, 20) as number, run: 3 },
      { witness: 'hub', thickness: expect.closeTo(72.5e-9, 20) as number },
    ]);
  });

  test('tell every fault by its row and column, and keep the good rows', () => {
    const { readings, faults } = readReadings(
      'witness,thickness,run\nA,118 nm,x\nB,12,\n,7 mg,1\nC,90 nm,2,9\nD,1 nm,1',
      COLUMNS,
    );
    expect(readings).toEqual([{ witness: 'D', thickness: expect.closeTo(1e-9, 20) as number, run: 1 }]);
    expect(faults.map(({ row, column }) => [row, column])).toEqual([
      [2, 'run'],
      [3, 'thickness'],
      [4, 'thickness'],
      [4, 'witness'],
      [5, null],
    ]);
    expect(faults[1]?.message).toMatch(/the unit is missing/);
    expect(faults[2]?.message).toMatch(/unit of mass/);
  });

  test('refuse an unknown column, a wrong unit over a column, and a missing column', () => {
    const { faults } = readReadings('witness,thicknes,run\nA,1,1', COLUMNS);
    expect(faults).toContainEqual({
      row: 1,
      column: 'thicknes',
      message: expect.stringContaining('thickness') as string,
    });
    expect(faults).toContainEqual({
      row: null,
      column: 'thickness',
      message: expect.stringContaining('found none') as string,
    });
    expect(readReadings('witness,thickness (kg)\nA,1', COLUMNS).faults[0]).toMatchObject({
      row: 1,
      column: 'thickness',
    });
  });

  test('nothing is no fault', () => {
    for (const text of ['', ' \n\n', '\uFEFF'])
      expect(readReadings(text, COLUMNS)).toMatchObject({ readings: [], faults: [], rows: [] });
  });

  test('come back as they were written', () => {
    const values = fc.array(fc.double({ min: 1e-3, max: 1e6, noNaN: true }), { minLength: 1, maxLength: 20 });
    fc.assert(
      fc.property(values, (nanometres) => {
        const text = `witness\tthickness\n\tnm\n${nanometres.map((value, i) => `W${i}\t${value}`).join('\n')}`;
        const { readings, faults } = readReadings(text, COLUMNS);
        expect(faults).toEqual([]);
        readings.forEach(({ thickness }, i) =>
          expect(Math.abs(Number(thickness) / (nanometres[i]! * 1e-9) - 1)).toBeLessThan(ROUNDING),
        );
      }),
      { seed: SEED },
    );
  });

  test('no text makes it throw', () => {
    fc.assert(
      fc.property(fc.string({ maxLength: 200 }), (text) => void readReadings(text, COLUMNS)),
      { seed: SEED },
    );
  });
});
