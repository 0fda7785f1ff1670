import fc from 'fast-check';
import { csvParseRows } from 'd3-dsv';
import { describe, expect, test } from 'vitest';
import { collide, spread } from '../../viewer/charts/log/drawLog.ts';
import type { LogChartData } from '../../viewer/charts/log/logChartTypes.ts';
import { axisRange } from '../../viewer/charts/log/logOptions.ts';
import { logCsv, logTable, readLine, shownRows } from '../../viewer/charts/log/logTable.ts';
import { scientific } from '../../viewer/format/scientific.ts';

const SEED = 20_261;
/** A few logarithms and one exponential. */
const ROUNDING = 1e-12;
/** Seven significant digits in a file. */
const FILE_DIGITS = 1e-6;

const LOG = { label: 'Time', unit: 'min' } as const;
const PRESSURE = { label: 'Pressure', unit: 'mbar' } as const;
/** y = 1000 / x² at some decades, and readings between them. */
const DATA: LogChartData = {
  xAxis: LOG,
  yAxis: PRESSURE,
  series: [
    { label: 'total', x: [1, 10, 100, 1000], y: [1000, 10, 0.1, 0.001] },
    { label: 'water, "sorbed"', x: [10, 1000], y: [4, 0.04] },
  ],
  points: [{ label: 'gauge', x: [0, 30, 100], y: [1013, 1.2, -1] }],
};

describe('the table of a chart', () => {
  const table = logTable(DATA);

  test('has all x once, rising, and every value in its row', () => {
    expect(table.x).toEqual([1, 10, 30, 100, 1000]);
    expect(table.columns).toEqual([
      [1000, 10, null, 0.1, 0.001],
      [null, 4, null, null, 0.04],
      [null, null, 1.2, null, null],
    ]);
    expect(table.heads.map(({ label, unit }) => `${label}|${unit}`)).toEqual([
      'Time|min',
      'total|mbar',
      'water, "sorbed"|mbar',
      'gauge|mbar',
    ]);
  });

  test('leaves out what a logarithmic axis cannot show, and a linear one shows it', () => {
    expect(table.x).not.toContain(0);
    const linear = logTable({ ...DATA, xAxis: { ...LOG, scale: 'linear' }, yAxis: { ...PRESSURE, scale: 'linear' } });
    expect(linear.x[0]).toBe(0);
    expect(linear.columns[2]?.[0]).toBe(1013);
    expect(linear.columns[2]?.[linear.x.indexOf(100)]).toBe(-1);
  });

  test('keeps the column of a line without any point', () => {
    const { columns } = logTable({ ...DATA, series: [{ label: 'none', x: [], y: [] }, ...DATA.series] });
    expect(columns).toHaveLength(4);
    expect(columns[0]?.every((value) => value === null)).toBe(true);
    expect(columns[1]?.[0]).toBe(1000);
  });

  test('reads a line between its points as it is drawn: a power law on logarithmic axes is exact', () => {
    const row = table.x.indexOf(30);
    const read = readLine(table, 0, row, [LOG, PRESSURE]);
    expect(Math.abs(read! / (1000 / 30 ** 2) - 1)).toBeLessThan(ROUNDING);
    expect(readLine(table, 1, 0, [LOG, PRESSURE])).toBeNull();
    expect(readLine(table, 0, 1, [LOG, PRESSURE])).toBe(10);
  });

  test('shows the first row, the last, and each measured reading', () => {
    const x = Array.from({ length: 500 }, (_, i) => i + 1);
    const long = logTable({
      ...DATA,
      series: [{ label: 'long', x, y: x }],
      points: [{ label: 'm', x: [7, 333], y: [1, 2] }],
    });
    const rows = shownRows(long, 10);
    expect(rows[0]).toBe(0);
    expect(rows.at(-1)).toBe(499);
    expect(rows.map((row) => long.x[row])).toEqual(expect.arrayContaining([7, 333]));
    expect(rows.length).toBeLessThanOrEqual(12);
  });

  test('survives its file, read by the general-purpose library d3-dsv', () => {
    const [names, units, ...rows] = csvParseRows(logCsv(table));
    expect(names).toEqual(table.heads.map(({ label }) => label));
    expect(units).toEqual(['min', 'mbar', 'mbar', 'mbar']);
    expect(rows).toHaveLength(table.x.length);
    rows.forEach((cells, row) => {
      expect(Number(cells[0])).toBe(table.x[row]);
      table.columns.forEach((column, i) => {
        const [text, value] = [cells[i + 1]!, column[row] ?? null];
        if (value === null) expect(text).toBe('');
        else expect(Math.abs(Number(text) / value - 1)).toBeLessThan(FILE_DIGITS);
      });
    });
  });
});

describe('the axes', () => {
  test('hold all that is to be seen, and no more than that on a logarithmic one', () => {
    expect(axisRange(LOG, [3, 0, -1, NaN, 1e-5, 20])).toEqual([1e-5, 20]);
    expect(axisRange({ ...LOG, range: [1, 5] }, [3, 1000])).toEqual([1, 5]);
    expect(axisRange(LOG, [])).toEqual([1, 10]);
    expect(axisRange(LOG, [1e-300, 100])).toEqual([1e-13, 100]);
    const [low, high] = axisRange({ ...LOG, scale: 'linear' }, [-2, 8]);
    expect(low).toBeLessThan(-2);
    expect(high).toBeGreaterThan(8);
  });

  test('a single value does not make an empty range', () => {
    for (const scale of ['log', 'linear'] as const) {
      const [low, high] = axisRange({ ...LOG, scale }, [7]);
      expect(low).toBeLessThan(7);
      expect(high).toBeGreaterThan(7);
    }
  });
});

describe('names at the ends of lines', () => {
  test('keep clear of each other and inside the plot, as long as there is room', () => {
    const heights = fc.array(fc.double({ min: 0, max: 300, noNaN: true }), { minLength: 1, maxLength: 12 });
    fc.assert(
      fc.property(heights, (wanted) => {
        const placed = spread(wanted, 0, 300).toSorted((a, b) => a - b);
        for (let i = 1; i < placed.length; i++)
          expect(placed[i]! - placed[i - 1]!).toBeGreaterThanOrEqual(15 - ROUNDING * 300);
        expect(placed.at(-1)).toBeLessThanOrEqual(298);
      }),
      { seed: SEED },
    );
  });
});

describe('numbers over many decades', () => {
  test.each([
    [0, '0'],
    [1e-5, '10⁻⁵'],
    [1.234e-7, '1.23·10⁻⁷'],
    [0.0125, '0.0125'],
    [99_949, '99900'],
    [99_999, '10⁵'],
    [2e5, '2·10⁵'],
    [-3e-9, '−3·10⁻⁹'],
    [NaN, '–'],
  ])('%s is written %s', (value, text) => {
    expect(scientific(value)).toBe(text);
  });
});

test('texts on one line run into each other, above one another or side by side they do not', () => {
  const name = { width: 60, right: 100, base: 40 };
  expect(collide(name, { width: 30, right: 60, base: 46 })).toBe(true);
  expect(collide(name, { width: 30, right: 160, base: 40 })).toBe(false);
  expect(collide(name, { width: 30, right: 40, base: 40 })).toBe(false);
  expect(collide(name, { width: 30, right: 60, base: 56 })).toBe(false);
});
