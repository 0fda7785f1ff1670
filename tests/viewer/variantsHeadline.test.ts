/** Two coats in sentences, and the columns of the table of variants. */
import { beforeAll, describe, expect, test } from 'vitest';
import { createEvaluator, openPlantFile, type Coat, type Estimate } from '../../engine/index.ts';
import { presets } from '../../presets/index.ts';
import { bestRows, COLUMNS, sortedRows, type Row } from '../../viewer/panels/compare/columns.ts';
import { headlineOf } from '../../viewer/panels/compare/headline.ts';
import type { Units } from '../../viewer/state/units.ts';

const UNITS: Units = { length: 'm', thickness: 'nm', mass: 'mg', pressure: 'mbar', temperature: 'degC' };

let real: Coat;
let better: Coat;

async function coatOf(id: string): Promise<Coat> {
  const opened = openPlantFile(presets.find((preset) => preset.id === id)?.file);
  if (!opened.ok) throw new Error('expected a sound preset');
  return createEvaluator().evaluate(opened.plant, { points: 2000, rays: 2 ** 13 });
}

beforeAll(async () => {
  [real, better] = await Promise.all([coatOf('tarn-hill-as-wired'), coatOf('tarn-hill-second-ring')]);
});

interface Numbers {
  readonly uniformity?: number;
  readonly minimum_nm?: number;
  readonly mean_nm?: number;
  readonly evaporated_g?: number;
  /** of every number, as a share of it */
  readonly error?: number;
  readonly tolerance?: number;
}

/** A coat with numbers that are easy to follow: 29 % uneven, 71 nm to 129 nm, 15 g. */
function made(numbers: Numbers): Coat {
  const {
    uniformity = 0.29,
    minimum_nm = 71,
    mean_nm = 100,
    evaporated_g = 15,
    error = 1e-6,
    tolerance = 0.1,
  } = numbers;
  const sure = (value: number): Estimate => ({ value, error: error * Math.abs(value) });
  return {
    ...real,
    plant: { ...real.plant, film: { ...real.plant.film, tolerance } },
    statistics: {
      ...real.statistics,
      mean: sure(mean_nm * 1e-9),
      uniformity: sure(uniformity),
      minimum: { ...real.statistics.minimum, ...sure(minimum_nm * 1e-9) },
      maximum: { ...real.statistics.maximum, ...sure((2 * mean_nm - minimum_nm) * 1e-9) },
    },
    budget: { ...real.budget, evaporated: evaporated_g * 1e-3 },
  };
}

describe('the headline of a comparison', () => {
  test.each<[string, Numbers, Numbers, string]>([
    [
      'more even at a cost',
      {},
      { uniformity: 0.11, minimum_nm: 92, evaporated_g: 18.3 },
      'B is 18 percentage points more even; thinnest +21 nm, at the cost of 3.3 g more aluminium.',
    ],
    [
      'less even for more',
      {},
      { uniformity: 0.332, minimum_nm: 66.5, evaporated_g: 20 },
      'B is 4.2 percentage points less even; thinnest \u22124.5 nm, with 5.0 g more aluminium.',
    ],
    [
      'more even for less',
      {},
      { uniformity: 0.28, minimum_nm: 71.5, evaporated_g: 14.9 },
      'B is 1 percentage point more even; thinnest +0.50 nm, with 0.10 g less aluminium.',
    ],
    [
      'as even, thicker',
      {},
      { minimum_nm: 80, evaporated_g: 17 },
      'B is as even as A; thinnest +9.0 nm, at the cost of 2.0 g more aluminium.',
    ],
    ['the same', {}, {}, 'B is as even as A; thinnest unchanged, with the same aluminium.'],
    [
      'changes that the errors hide',
      { error: 0.05 },
      { error: 0.05, uniformity: 0.3, minimum_nm: 72 },
      'B is as even as A; thinnest unchanged, with the same aluminium.',
    ],
    ['A bare', { mean_nm: 0 }, {}, 'B coats the mirror; A leaves it bare.'],
    ['B bare', {}, { mean_nm: 0 }, 'B leaves the mirror bare; A coats it.'],
    ['both bare', { mean_nm: 0 }, { mean_nm: 0 }, 'Both leave the mirror bare.'],
  ])('says: %s', (_name, a, b, sentence) => {
    expect(headlineOf(made(a), made(b), UNITS).sentence).toBe(sentence);
  });

  test.each<[string, Numbers, Numbers, string]>([
    ['neither', {}, {}, 'Neither keeps within ±10 %.'],
    ['only B', {}, { minimum_nm: 95 }, 'B keeps within ±10 %, A does not.'],
    ['only A', { minimum_nm: 95 }, {}, 'A keeps within ±10 %, B does not.'],
    ['both', { minimum_nm: 95 }, { minimum_nm: 96 }, 'Both keep within ±10 %.'],
    [
      'only B, by its own measure',
      { minimum_nm: 93, tolerance: 0.05 },
      { minimum_nm: 93 },
      'B keeps within its ±10 %, A does not within its ±5 %.',
    ],
    [
      'both, each by its own measure',
      { minimum_nm: 96, tolerance: 0.05 },
      { minimum_nm: 96 },
      'Both keep within their tolerance, A ±5 % and B ±10 %.',
    ],
    ['neither, each by its own', { tolerance: 0.05 }, {}, 'Neither keeps within its tolerance, A ±5 % and B ±10 %.'],
  ])('says of the tolerance: %s', (_name, a, b, second) => {
    expect(headlineOf(made(a), made(b), UNITS).second).toBe(second);
  });

  test('speaks ångström and ounces to those who think so', () => {
    const units: Units = { ...UNITS, thickness: 'Å', mass: 'oz' };
    expect(
      headlineOf(made({}), made({ uniformity: 0.11, minimum_nm: 92, evaporated_g: 43.349523125 }), units).sentence,
    ).toBe('B is 18 percentage points more even; thinnest +210 Å, at the cost of 1.0 oz more aluminium.');
  });

  test('turns around when the sides are swapped', () => {
    const there = headlineOf(real, better, UNITS).sentence;
    const back = headlineOf(better, real, UNITS).sentence;
    expect(there).toMatch(/^B is [\d.]+ percentage points more even; thinnest \+/);
    expect(back).toMatch(/^B is [\d.]+ percentage points less even; thinnest \u2212/);
    expect(/[\d.]+/.exec(there)?.[0]).toBe(/[\d.]+/.exec(back)?.[0]);
  });
});

describe('the columns of variants', () => {
  const column = (key: string) => COLUMNS.find((item) => item.key === key)!;
  const row = (id: string, numbers: Numbers | null): Row => ({ id, coat: numbers && made(numbers) });

  test('show the statistics of the coat with their errors', () => {
    const shown = COLUMNS.map(
      ({ key, estimate, text }) => [key, estimate(real).value, text(estimate(real), UNITS)] as const,
    );
    const { statistics, budget } = real;
    expect(shown.map(([, value]) => value)).toEqual([
      statistics.mean.value,
      statistics.minimum.value,
      statistics.maximum.value,
      statistics.uniformity.value,
      statistics.rms.value,
      statistics.edgeRatio.value,
      statistics.fractionInside.value,
      statistics.collection.value,
      budget.evaporated,
    ]);
    for (const [key, , { error }] of shown) expect(error, key).toMatch(/^(?:[±<] [\d.]+|exact)$/);
    // 36 filaments of 4 loops, two clips of 53.2 mg on each: 15.32 g
    expect(shown.at(-1)?.[2].value).toBe('15.32');
  });

  test.each<[string, Numbers, Numbers]>([
    ['mean', { mean_nm: 98 }, { mean_nm: 105 }],
    ['minimum', { minimum_nm: 90 }, { minimum_nm: 80 }],
    ['maximum', { minimum_nm: 90 }, { minimum_nm: 80 }],
    ['uniformity', { uniformity: 0.1 }, { uniformity: 0.2 }],
    ['evaporated', { evaporated_g: 10 }, { evaporated_g: 12 }],
  ])('know the better %s', (key, good, bad) => {
    const rows = [row('bad', bad), row('good', good), row('worse', { ...bad, mean_nm: 0 }), row('unknown', null)];
    expect([...bestRows(column(key), rows)]).toEqual(['good']);
    const order = sortedRows(rows.slice(0, 2), { key, isWorstFirst: false }).map(({ id }) => id);
    expect(order).toEqual(['good', 'bad']);
    expect(sortedRows(rows.slice(0, 2), { key, isWorstFirst: true }).map(({ id }) => id)).toEqual(['bad', 'good']);
  });

  test('call none the best where all are alike, or the errors hide which is', () => {
    expect(bestRows(column('minimum'), [row('a', {}), row('b', {})]).size).toBe(0);
    expect(bestRows(column('minimum'), [row('a', {})]).size).toBe(0);
    const unsure = { error: 0.02 };
    const rows = [row('a', unsure), row('b', { ...unsure, minimum_nm: 72 }), row('c', { ...unsure, minimum_nm: 50 })];
    expect([...bestRows(column('minimum'), rows)]).toEqual(['a', 'b']);
  });

  test('compare no areas within different tolerances', () => {
    const half = (coat: Coat, value: number): Coat => ({
      ...coat,
      statistics: { ...coat.statistics, fractionInside: { value, error: 0 } },
    });
    const rows = [
      { id: 'a', coat: half(made({}), 0.5) },
      { id: 'b', coat: half(made({}), 0.6) },
    ];
    expect([...bestRows(column('inside'), rows)]).toEqual(['b']);
    const other = { id: 'c', coat: half(made({ tolerance: 0.05 }), 0.4) };
    expect(bestRows(column('inside'), [...rows, other]).size).toBe(0);
  });

  test('put rows without a coat last', () => {
    const rows = [row('none', null), row('a', {}), row('b', { minimum_nm: 90 })];
    for (const isWorstFirst of [true, false])
      expect(sortedRows(rows, { key: 'minimum', isWorstFirst }).at(-1)?.id).toBe('none');
    expect(sortedRows(rows, { key: null, isWorstFirst: false })).toBe(rows);
  });
});
