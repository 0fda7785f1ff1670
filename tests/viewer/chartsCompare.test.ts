import { describe, expect, test } from 'vitest';
import { createFace } from '../../engine/geometry/face.ts';
import { createProbe, type Coat, type Plant } from '../../engine/index.ts';
import { compareData, profileAt } from '../../viewer/charts/compareData.ts';
import { contributionGroups, numberRanges } from '../../viewer/charts/contributions.ts';
import { differenceOf, interpolated } from '../../viewer/charts/difference.ts';
import { mapSubjectOf, probedValue, sharedRangeOf } from '../../viewer/charts/mapSubject.ts';
import { movedProbe } from '../../viewer/charts/probeMoves.ts';
import { readRangeEnd } from '../../viewer/charts/rangeEnd.ts';
import { fieldUnit, lengthUnit, shownPlace, shownText, thicknessUnit } from '../../viewer/charts/shownUnits.ts';
import type { Units } from '../../viewer/state/units.ts';
import { coatOf, plantOf, shapeOf } from '../support/plants.ts';

/** A few sums and products of numbers near 1. */
const ROUNDING = 1e-9;

const METRIC: Units = { length: 'm', thickness: 'nm', mass: 'mg', pressure: 'mbar', temperature: 'degC' };
const INCHES: Units = { ...METRIC, length: 'in', thickness: 'Å' };

const RING = { arrangement: 'ring', type: 'four', axis: 'tangential' };
const plant = (more: object = {}, diameter = '2 m'): Plant =>
  plantOf({
    mirror: { radiusOfCurvature: '10 m', conicConstant: -1, outerDiameter: diameter, holeDiameter: '0.4 m' },
    tank: { diameter: '4 m', depth: '3 m' },
    filamentTypes: {
      four: { loops: 4, length: '60 mm', clipMass: '60 mg', clipsPerLoop: 1, emission: { law: 'open coil' } },
    },
    filaments: [
      {
        ...RING,
        name: 'outer',
        count: 18,
        diameter: '2.2 m',
        height: '1 m',
        exceptions: [{ filament: 3, outOfUse: true }],
      },
      {
        ...RING,
        name: 'inner',
        count: 4,
        diameter: '1 m',
        height: '1.2 m',
        exceptions: [{ filament: 2, charge: '0 mg' }],
      },
    ],
    ...more,
  });
const POINTS = { points: 3000, rays: 1024 };
const first: Coat = await coatOf(plant(), { ...POINTS, withArrival: true });

describe('the difference', () => {
  test('of a coat with itself is zero', () => {
    const difference = differenceOf(first, first);
    expect(difference.ok && difference.values.every((value) => value === 0)).toBe(true);
  });

  test('of two coats on the same points is taken point by point', async () => {
    const thicker = await coatOf(
      plant({ film: { target: '100 nm', tolerance: '10 %', density: '2500 kg/m3' } }),
      POINTS,
    );
    const difference = differenceOf(thicker, first);
    if (!difference.ok) throw new Error(difference.reason);
    difference.values.forEach((value, i) => {
      // the film is 2700/2500 as thick at the lower density
      expect(Math.abs(value - first.thickness[i]! * 1e9 * (2700 / 2500 - 1))).toBeLessThan(ROUNDING * 100);
    });
  });

  test('reaches every point of another grid, where a linear field is exact', () => {
    const shape = shapeOf({ holeRadius: 0.25, cornerAngle: null });
    const [from, to] = [createFace(shape, 3000), createFace(shape, 4700)];
    const linear = (face: typeof from): Float64Array =>
      Float64Array.from(
        { length: face.points.count },
        (_, i) => 3 * face.points.position[3 * i]! + face.points.position[3 * i + 1]!,
      );
    const expected = linear(to);
    interpolated(from, linear(from), to).forEach((value, i) => {
      expect(Math.abs(value - expected[i]!)).toBeLessThan(ROUNDING);
    });
  });

  test('says which part of the mirrors differs', async () => {
    const other = await coatOf(plant({}, '2.1 m'), POINTS);
    expect(differenceOf(first, other)).toMatchObject({
      ok: false,
      reason: expect.stringContaining('outer diameter') as string,
    });
  });
});

describe('profiles side by side', () => {
  test('keep their own radii', () => {
    const other: Coat = { ...first, profile: { ...first.profile, radius: first.profile.radius.map((r) => r * 0.999) } };
    const { radius, a_nm, b_nm } = compareData(first, other);
    expect(radius).toHaveLength(2 * first.profile.radius.length);
    expect(radius).toEqual(radius.toSorted((p, q) => p - q));
    expect(a_nm.filter((value) => typeof value === 'number')).toHaveLength(first.profile.radius.length);
    expect(b_nm.filter((value) => typeof value === 'number')).toHaveLength(first.profile.radius.length);
  });

  test('are read between their radii, and not beyond', () => {
    const { radius, mean } = first.profile;
    expect(profileAt(first, radius[7]!)).toBeCloseTo(mean[7]!, 18);
    expect(profileAt(first, (radius[7]! + radius[8]!) / 2)).toBeCloseTo((mean[7]! + mean[8]!) / 2, 18);
    expect(profileAt(first, radius.at(-1)!)).toBeCloseTo(mean.at(-1)!, 18);
    expect(profileAt(first, 2)).toBeNaN();
    expect(profileAt(first, 0.1)).toBeNaN();
  });
});

describe('contributions', () => {
  test('are sorted, grouped by set and add up', async () => {
    const reading = (await createProbe(first.plant))(0.6, 0.1);
    if (!reading) throw new Error('expected the place to be on the glass');
    const groups = contributionGroups(first.plant, reading.contributions, 12);
    expect(groups.map(({ name }) => name).toSorted()).toEqual(['inner', 'outer']);
    expect(groups[0]!.total.thickness).toBeGreaterThan(groups[1]!.total.thickness);
    expect(groups.reduce((sum, { total }) => sum + total.share, 0)).toBeCloseTo(1, 9);
    expect(groups.reduce((sum, { total }) => sum + total.thickness, 0)).toBeCloseTo(reading.thickness, 15);
    expect(groups.reduce((sum, { largest }) => sum + largest.length, 0)).toBe(12);
    const smallest = Math.min(...groups.flatMap(({ largest }) => largest.map(({ thickness }) => thickness)));
    const others = [...reading.contributions].toSorted((p, q) => q - p).slice(12);
    expect(smallest).toBeGreaterThanOrEqual(others[0]!);
    for (const { largest, rest, total } of groups) {
      expect(largest.map(({ thickness }) => thickness)).toEqual(
        largest.map(({ thickness }) => thickness).toSorted((p, q) => q - p),
      );
      expect(largest.length + rest.count).toBe(total.count);
    }
  });

  test('name filaments out of use, without charge and blocked', () => {
    const contributions = new Float64Array(22).fill(1e-9);
    contributions[2] = 0; // outer 3, out of use
    contributions[19] = 0; // inner 2, without charge
    contributions[5] = 0; // outer 6
    const groups = contributionGroups(first.plant, contributions, 12);
    expect(groups.find(({ name }) => name === 'outer')).toMatchObject({ outOfUse: [3], empty: [], blocked: [6] });
    expect(groups.find(({ name }) => name === 'inner')).toMatchObject({ outOfUse: [], empty: [2], blocked: [] });
  });

  test('of nothing have no share', () => {
    const groups = contributionGroups(first.plant, new Float64Array(22), 12);
    for (const { total, largest } of groups) {
      expect(total).toEqual({ count: 0, thickness: 0, share: 0 });
      expect(largest).toEqual([]);
    }
  });

  test('join neighbouring numbers', () => {
    expect(numberRanges([7, 1, 2, 3, 5, 9, 10])).toBe('1–3, 5, 7, 9, 10');
    expect(numberRanges([])).toBe('');
  });
});

describe('the map', () => {
  test('marks the tolerance about the mean in thickness and in deviation, and in no angle', () => {
    const mean = first.statistics.mean.value * 1e9;
    const subject = (quantity: 'thickness' | 'deviation' | 'incidence') =>
      mapSubjectOf(first, { quantity, range: { mode: 'automatic' }, fromZero: false }, METRIC);
    const levels = subject('thickness')?.keyLevels ?? [];
    expect(levels.map(({ value }) => value / mean)).toEqual([expect.closeTo(0.9, 12), expect.closeTo(1.1, 12)]);
    expect(levels.map(({ isDashed }) => isDashed)).toEqual([false, true]);
    const target = first.plant.film.target * 1e9;
    expect(subject('deviation')?.keyLevels[0]?.value).toBeCloseTo(100 * ((0.9 * mean) / target - 1), 9);
    expect(subject('incidence')?.keyLevels).toEqual([]);
    expect(
      mapSubjectOf(
        { ...first, arrival: null },
        { quantity: 'incidence', range: { mode: 'automatic' }, fromZero: false },
        METRIC,
      ),
    ).toBeNull();
  });

  test('has the range that was asked for', () => {
    const scale = (range: Parameters<typeof mapSubjectOf>[1]['range'], shared?: readonly [number, number]) =>
      mapSubjectOf(first, { quantity: 'thickness', range, fromZero: false }, METRIC, shared)?.scale;
    expect(scale({ mode: 'fixed', low: 12.5, high: 77 })).toMatchObject({ low: 12.5, high: 77 });
    expect(scale({ mode: 'shared' }, [0, 200])).toMatchObject({ low: 0, high: 200 });
    const [low = NaN, high = NaN] = sharedRangeOf([first, first], 'thickness') ?? [];
    expect(scale({ mode: 'shared' }, [low, high])).toEqual(scale({ mode: 'automatic' }));
    expect(sharedRangeOf([first, { ...first, arrival: null }], 'incidence')).toBeUndefined();
  });

  test('reads at the probe what it shows', async () => {
    const node = 100;
    const [x, y] = first.face.points.position.subarray(3 * node, 3 * node + 2) as unknown as [number, number];
    const reading = (await createProbe(first.plant))(x, y);
    if (!reading) throw new Error('expected a node to be on the glass');
    for (const quantity of ['thickness', 'deviation', 'incidence', 'grazing'] as const) {
      const shown =
        mapSubjectOf(first, { quantity, range: { mode: 'automatic' }, fromZero: false }, METRIC)?.values[node] ?? NaN;
      expect(Math.abs(probedValue(first, quantity, reading) - shown)).toBeLessThan(ROUNDING * 100);
    }
  });

  test('is walked over by keys, across the hole and not off the rim', () => {
    const { shape } = first.plant;
    expect(movedProbe(shape, [0.5, 0], 'ArrowRight', false)).toEqual([0.51, 0]);
    expect(movedProbe(shape, [0.5, 0], 'ArrowUp', true)).toEqual([0.5, 0.1]);
    const [across = NaN] = movedProbe(shape, [0.205, 0], 'ArrowLeft', false) ?? [];
    expect(across).toBeLessThanOrEqual(-0.2);
    expect(across).toBeGreaterThan(-0.22);
    expect(movedProbe(shape, [0.999, 0], 'ArrowRight', false)).toBeNull();
    expect(movedProbe(shape, [0.5, 0], 'Enter', false)).toBeNull();
  });
});

describe('units', () => {
  test('are the user’s', () => {
    expect(thicknessUnit(INCHES)).toEqual({ unit: 'Å', factor: 10 });
    expect(lengthUnit(INCHES).factor).toBeCloseTo(1 / 0.0254, 9);
    expect(fieldUnit('%', INCHES)).toEqual({ unit: '%', factor: 1 });
    expect(shownText(96.31, thicknessUnit(METRIC))).toBe('96.3 nm');
    expect(shownText(96.31, thicknessUnit(INCHES))).toBe('963 Å');
    expect(shownText(51.2, { unit: '°', factor: 1 })).toBe('51.2°');
    expect(shownPlace(0, -0.5, lengthUnit(METRIC))).toBe('r 0.500 m, 270°');
    expect(shownPlace(1, -1e-9, lengthUnit(METRIC))).toBe('r 1.000 m, 0°');
  });

  test.each([
    ['60 nm', 'nm', INCHES, 60],
    ['600', 'nm', INCHES, 60],
    ['600', 'nm', METRIC, 600],
    ['600 Å', 'nm', METRIC, 60],
    ['−5 %', '%', METRIC, -5],
    ['12', '%', METRIC, 12],
    ['45°', '°', METRIC, 45],
    ['45', '°', METRIC, 45],
  ])('%s of a field in %s is read', (text, unit, units, expected) => {
    expect(readRangeEnd(text, unit, fieldUnit(unit, units))).toBeCloseTo(expected as number, 9);
  });

  test.each([
    ['much', 'nm'],
    ['5 kg', 'nm'],
    ['5 nm', '%'],
    ['', '°'],
  ])('“%s” for a field in %s is refused in words', (text, unit) => {
    expect(readRangeEnd(text, unit, fieldUnit(unit, METRIC))).toEqual(expect.stringMatching(/expected .+/));
  });
});
