import { describe, expect, test } from 'vitest';
import { readPressures } from '../../../engine/vacuum/readings.ts';

const TABLE = 'time,pressure\nmin,mbar\n0,1.5e-4\n1,2e-4\n2.5,2.5e-4\n';
/** A unit's factor and the rounding of a written number. */
const DIGITS = 12;

describe('pasted pressures', () => {
  test.each([
    ['commas', TABLE],
    ['tabs', TABLE.replaceAll(',', '\t')],
    ['semicolons and decimal commas', TABLE.replaceAll(',', ';').replaceAll('.', ',')],
    ['headings in capitals', TABLE.replace('time,pressure', 'Time,PRESSURE')],
    ['columns the other way round', 'pressure,time\nmbar,min\n1.5e-4,0\n2e-4,1\n2.5e-4,2.5'],
    ['blanks, empty lines at the end and a byte order mark', `\uFEFF${TABLE.replaceAll(',', ' , ')}\n\n`],
  ])('are read with %s', (_name, text) => {
    const { readings, faults } = readPressures(text);
    expect(faults).toEqual([]);
    expect(readings.map(({ time }) => time)).toEqual([0, 60, 150]);
    readings.forEach(({ pressure }, i) => expect(pressure).toBeCloseTo([0.015, 0.02, 0.025][i]!, DIGITS));
  });

  test.each([
    ['nothing', '', null, null, 'expected a heading row'],
    ['a heading alone', 'time,pressure\ns,Pa\n', null, null, 'at least one reading'],
    ['a column missing', 'time\ns\n1\n', 1, 'pressure', 'expected a column "pressure"'],
    ['a misspelt column', 'time,presure\ns,Pa\n1,1\n', 1, null, 'did you mean "pressure"?'],
    ['a column twice', 'time,pressure,time\ns,Pa,s\n1,1,1\n', 1, 'time', 'stands twice'],
    ['no units', 'time,pressure\n0,1\n1,2\n', 2, 'time', 'expected a unit, one of s, min'],
    ['a unit of another kind', 'time,pressure\ns,kg\n0,1\n', 2, 'pressure', 'expected a unit, one of Pa'],
    ['a word for a number', 'time,pressure\ns,Pa\n0,1\n1,low\n', 4, 'pressure', 'expected a pressure'],
    ['an empty cell', 'time,pressure\ns,Pa\n0,1\n,2\n', 4, 'time', 'found nothing'],
    ['times out of order', 'time,pressure\ns,Pa\n0,1\n5,2\n4,3\n', 5, 'time', 'expected a time after the 5 s'],
    ['a negative pressure', 'time,pressure\ns,Pa\n0,-1\n', 3, 'pressure', 'above zero'],
    ['a pressure above the atmosphere', 'time,pressure\ns,mbar\n0,2000\n', 3, 'pressure', 'is the unit right?'],
  ] as const)('with %s are refused', (_name, text, row, column, message) => {
    const { readings, faults } = readPressures(text);
    expect(readings).toEqual([]);
    expect(faults).toContainEqual({ row, column, message: expect.stringContaining(message) as string });
  });

  test('tell all faults at once', () => {
    expect(readPressures('time,pressure\ns,Pa\nx,1\n1,y\n,\n2,2\n').faults.map(({ row }) => row)).toEqual([3, 4, 5, 5]);
  });

  test('of too many rows are refused', () => {
    const { faults } = readPressures(`time,pressure\ns,Pa\n${'1,1\n'.repeat(5001)}`);
    expect(faults[0]!.message).toBe('expected at most 5000 readings; found 5001');
  });
});
