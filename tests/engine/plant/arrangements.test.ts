import { describe, expect, test } from 'vitest';
import { gap, oneFilament, ROUNDING, sampleFilaments, samplePlant, vectorAt } from './samplePlant.ts';

const RING = { arrangement: 'ring', count: 7, diameter: '2.2 m', height: '0.8 m', startAngle: '13 deg' };
const DEGREE = Math.PI / 180;

describe('a ring', () => {
  test('spaces its filaments evenly, anticlockwise from the start angle', () => {
    sampleFilaments(RING).forEach(({ center, number }, i) => {
      const angle = 13 * DEGREE + (i * 2 * Math.PI) / 7;
      expect(number).toBe(i + 1);
      expect(gap(center, [1.1 * Math.cos(angle), 1.1 * Math.sin(angle), 0.8])).toBeLessThan(ROUNDING);
    });
  });

  test.each([
    ['tangential', (a: number) => [-Math.sin(a), Math.cos(a), 0]],
    ['radial', (a: number) => [Math.cos(a), Math.sin(a), 0]],
    ['axial', () => [0, 0, 1]],
  ] as const)('turns a %s axis with the clock angle', (axis, expected) => {
    sampleFilaments({ ...RING, axis }).forEach(({ coilAxis }, i) => {
      expect(gap(coilAxis, expected(13 * DEGREE + (i * 2 * Math.PI) / 7))).toBeLessThan(ROUNDING);
    });
  });

  test('keeps an axis of three numbers, at unit length', () => {
    for (const { coilAxis } of sampleFilaments({ ...RING, axis: [0, 3, 4] }))
      expect(gap(coilAxis, [0, 0.6, 0.8])).toBeLessThan(ROUNDING);
  });

  test('of no diameter stands on the axis, coils along y', () => {
    for (const { center, coilAxis } of sampleFilaments({ ...RING, diameter: '0 m' })) {
      expect(gap(center, [0, 0, 0.8])).toBeLessThan(ROUNDING);
      expect(gap(coilAxis, [0, 1, 0])).toBeLessThan(ROUNDING);
    }
  });
});

describe('a line', () => {
  const line = { arrangement: 'line', from: ['-0.6 m', '0.1 m', '0.7 m'], to: ['0.6 m', '0.5 m', '0.9 m'] };
  const length = Math.hypot(1.2, 0.4, 0.2);

  test('has its first and last filaments at its ends, the others evenly between', () => {
    sampleFilaments({ ...line, count: 5 }).forEach(({ center }, i) => {
      const t = i / 4;
      expect(gap(center, [-0.6 + 1.2 * t, 0.1 + 0.4 * t, 0.7 + 0.2 * t])).toBeLessThan(ROUNDING);
    });
  });

  test('lays coils along itself unless told otherwise', () => {
    for (const { coilAxis } of sampleFilaments({ ...line, count: 2 }))
      expect(gap(coilAxis, [1.2 / length, 0.4 / length, 0.2 / length])).toBeLessThan(ROUNDING);
    for (const { coilAxis } of sampleFilaments({ ...line, count: 2, axis: 'axial' }))
      expect(coilAxis).toEqual([0, 0, 1]);
  });

  test('puts a single filament in its middle', () => {
    expect(gap(sampleFilaments({ ...line, count: 1 })[0]?.center ?? [], [0, 0.3, 0.8])).toBeLessThan(ROUNDING);
  });

  test('of no length gives a finite axis', () => {
    expect(sampleFilaments({ ...line, to: line.from, count: 2 })[1]?.coilAxis).toEqual([1, 0, 0]);
  });
});

test('a grid counts along x first, centred on its middle', () => {
  const grid = {
    arrangement: 'grid',
    columns: 3,
    rows: 2,
    spacing: ['0.2 m', '0.3 m'],
    center: ['0.1 m', '-0.1 m', '1 m'],
  };
  const expected = [-1, 0, 1, -1, 0, 1].map((column, i) => [0.1 + 0.2 * column, -0.1 + 0.3 * (i < 3 ? -0.5 : 0.5), 1]);
  const filaments = sampleFilaments(grid);
  expect(filaments).toHaveLength(6);
  filaments.forEach(({ center, coilAxis }, i) => {
    expect(gap(center, expected[i] ?? [])).toBeLessThan(ROUNDING);
    expect(coilAxis).toEqual([1, 0, 0]);
  });
});

test('a list keeps its positions; an axis of its own goes before the axis of the list', () => {
  const [a, b] = sampleFilaments({
    arrangement: 'list',
    axis: 'radial',
    filaments: [
      { position: ['0 m', '0.7 m', '1 m'], axis: 'tangential', name: 'lead', feed: 'north' },
      { position: ['0 m', '-0.7 m', '1 m'] },
    ],
  });
  expect([a?.center, b?.center]).toEqual([
    [0, 0.7, 1],
    [0, -0.7, 1],
  ]);
  expect(gap(a?.coilAxis ?? [], [-1, 0, 0])).toBeLessThan(ROUNDING);
  expect(gap(b?.coilAxis ?? [], [0, -1, 0])).toBeLessThan(ROUNDING);
  expect([a?.name, b?.name, a?.feed, b?.feed]).toEqual(['lead', 'set 2', 'north', null]);
});

test.each([1, 2, 3, 4, 9])('%i loops sit at (j − (k−1)/2)·L/k along the coil', (k) => {
  const { source, center, coilAxis } = oneFilament([0.6, 0, 1], { loops: k, length: '90 mm' }, { axis: [2, -1, 2] });
  expect(source.count).toBe(k);
  let sum = 0;
  for (let j = 0; j < k; j++) {
    const along = ((j - (k - 1) / 2) * 0.09) / k;
    const expected = center.map((x, i) => x + (along * [2, -1, 2][i]!) / 3);
    expect(gap(vectorAt(source.position, j), expected)).toBeLessThan(ROUNDING);
    expect(vectorAt(source.axis, j)).toEqual([...coilAxis]);
    expect(source.weight[j]).toBeCloseTo(1 / k, 15);
    sum += along;
  }
  expect(Math.abs(sum)).toBeLessThan(ROUNDING);
});

describe('feeds', () => {
  const feedsOf = (count: number, feeds: number): string =>
    sampleFilaments({ ...RING, count, feeds })
      .map(({ feed }) => feed?.at(-1))
      .join('');

  test.each([
    [12, 3, '111122223333'],
    [7, 3, '1112233'],
    [5, 5, '12345'],
    [4, 1, '1111'],
  ])('%i filaments on %i feeds are shared among neighbours: %s', (count, feeds, expected) => {
    expect(feedsOf(count, feeds)).toBe(expected);
  });

  test('differ by one filament at most', () => {
    for (let count = 1; count <= 40; count++) {
      for (let feeds = 1; feeds <= Math.min(9, count); feeds++) {
        const text = feedsOf(count, feeds);
        const sizes = Array.from({ length: feeds }, (_, f) => text.split(String(f + 1)).length - 1);
        expect(Math.max(...sizes) - Math.min(...sizes)).toBeLessThanOrEqual(1);
      }
    }
  });

  test('are named after their set', () => {
    expect(sampleFilaments({ ...RING, feeds: 2 })[6]?.feed).toBe('set feed 2');
    expect(sampleFilaments(RING)[0]?.feed).toBeNull();
  });
});

describe('an off-axis mirror', () => {
  const mirror = { radiusOfCurvature: '10 m', conicConstant: -1, outerDiameter: '2 m', offAxisDistance: '1.5 m' };

  test('takes the rings and the tank along to its middle', () => {
    const plant = samplePlant({ ...RING, axis: 'radial', startAngle: '0 deg', height: '1 m' }, {}, { mirror });
    expect(plant.shape.centerX).toBe(1.5);
    expect(plant.tank.centerX).toBe(1.5);
    plant.filaments.forEach(({ center, coilAxis }, i) => {
      const angle = (i * 2 * Math.PI) / 7;
      expect(gap(center, [1.5 + 1.1 * Math.cos(angle), 1.1 * Math.sin(angle), 1])).toBeLessThan(ROUNDING);
      expect(gap(coilAxis, [Math.cos(angle), Math.sin(angle), 0])).toBeLessThan(ROUNDING);
    });
  });

  test('leaves listed positions in the frame of the parent', () => {
    const list = { arrangement: 'list', filaments: [{ position: ['1 m', '0 m', '1 m'] }] };
    const [filament] = samplePlant({ ...list, axis: 'radial' }, {}, { mirror }).filaments;
    expect(filament?.center).toEqual([1, 0, 1]);
    expect(gap(filament?.coilAxis ?? [], [-1, 0, 0])).toBeLessThan(ROUNDING);
  });
});
