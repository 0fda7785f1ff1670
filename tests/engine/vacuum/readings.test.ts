import { expect, test } from 'vitest';
import { readingFaults } from '../../../engine/vacuum/readings.ts';

test('rising times and pressures of a tank have no faults', () => {
  expect(
    readingFaults([
      { time: 0, pressure: 101_325 },
      { time: 60, pressure: 0.02 },
    ]),
  ).toEqual([]);
});

test.each([
  ['a time out of order', { time: 4, pressure: 3 }, 'time', 'expected a time after the 5 s'],
  ['the same time again', { time: 5, pressure: 3 }, 'time', 'expected a time after the 5 s'],
  ['no time', { time: NaN, pressure: 3 }, 'time', 'expected a time'],
  ['no pressure', { time: 6, pressure: NaN }, 'pressure', 'expected a pressure'],
  ['no pressure at all', { time: 6, pressure: 0 }, 'pressure', 'above zero'],
  ['a negative pressure', { time: 6, pressure: -1 }, 'pressure', 'above zero'],
  ['a pressure above the atmosphere', { time: 6, pressure: 200_000 }, 'pressure', 'is the unit right?'],
] as const)('%s is told by row and column', (_, second, column, message) => {
  const faults = readingFaults([{ time: 5, pressure: 1 }, second], 3);
  expect(faults).toEqual([{ row: 4, column, message: expect.stringContaining(message) as string }]);
});
