import { describe, expect, test } from 'vitest';
import type { EmissionLaw } from '../../../engine/emission/emissionLaw.ts';
import { valueAtPolar } from '../../../engine/field/evaluateSeries.ts';
import { createFieldSolver } from '../../../engine/field/fieldSolver.ts';
import { sumFields, type SmoothField } from '../../../engine/field/smoothField.ts';
import { twinClasses } from '../../../engine/field/twins.ts';
import type { MirrorShape } from '../../../engine/geometry/mirrorShape.ts';
import type { KeyedSource } from '../../../engine/transport/transport.ts';
import { anyKernel, coilSource, keyed, ringSources, seededPlant } from './fieldPlants.ts';
import { shapeOf } from '../../support/plants.ts';

const COIL: EmissionLaw = { kind: 'coil' };
const COSINE: EmissionLaw = { kind: 'cosine', power: 1 };
const SHAPE = shapeOf({ rimRadius: 1.3, holeRadius: 0.275, curvature: 1 / 12, conicConstant: -1 });
const RING = { count: 12, radius: 1.2, height: 0.9, law: COSINE };

/** Places of the face that no layout here prefers. */
const PLACES = Array.from({ length: 60 }, (_, i) => [0.3 + (i % 10) * 0.1, 2.399 * i] as const);

function solve(
  sources: readonly KeyedSource[],
  masses: ArrayLike<number> = sources.map(() => 1),
  shape: MirrorShape = SHAPE,
): SmoothField {
  return createFieldSolver(shape, anyKernel()).solve(sources, masses);
}

const classCount = (sources: readonly KeyedSource[], shape: MirrorShape = SHAPE): number =>
  twinClasses(sources, sources.map(() => 1), shape).length; // prettier-ignore

/** Same columns turned by another angle: only the harmonics' turning is rounded. */
const ROUNDING = 1e-12;

const largestDifference = (a: SmoothField, b: SmoothField, turn = 0, sign = 1): number =>
  Math.max(
    ...PLACES.map(([r, angle]) =>
      Math.abs(valueAtPolar(a.series, r, angle) - valueAtPolar(b.series, r, sign * angle + turn)),
    ),
  );

describe('filaments of a ring', () => {
  test.each(['tangential', 'radial', 'axial'] as const)('are one column, turned: coils lie %s', (axis) => {
    expect(classCount(ringSources({ ...RING, law: COIL, axis }))).toBe(1);
  });

  test('of two rings at other radii or heights are two columns', () => {
    const [a, b, c] = [{}, { radius: 1.1 }, { height: 1 }].map((other) => ringSources({ ...RING, ...other }));
    expect(classCount([...a!, ...b!])).toBe(2);
    expect(classCount([...a!, ...c!])).toBe(2);
    expect(classCount([...a!, ...a!])).toBe(1);
  });

  test('stand for themselves over a mirror off its axis, but for mirror images', () => {
    const shape = { ...SHAPE, centerX: 2 };
    // 12 filaments: two lie on the plane of symmetry, the others are five pairs
    expect(classCount(ringSources({ ...RING, centerX: 2 }), shape)).toBe(7);
  });

  test('without charge are left out', () => {
    const sources = ringSources(RING);
    expect(twinClasses(sources, sources.map(() => 0), SHAPE)).toEqual([]); // prettier-ignore
    const { series, error } = solve(sources, new Float64Array(12));
    expect(valueAtPolar(series, 1, 0)).toBe(0);
    expect(error).toBe(0);
  });
});

describe('a field', () => {
  const uneven = Array.from({ length: 12 }, (_, i) => 1 + Math.sin(i * i));

  test('turns with the plant', () => {
    const [there, here] = [0.37, 0].map((start) => solve(ringSources({ ...RING, start }), uneven));
    expect(largestDifference(here!, there!, 0.37)).toBeLessThan(ROUNDING);
  });

  test('turns with scattered filaments, within the stated errors', () => {
    const turned = (angle: number): KeyedSource[] =>
      [0.4, 0.9, 1.1].map((r, i) => {
        const [a, b] = [1.7 * i + angle, i + 1 + angle];
        const at = [r * Math.cos(a), r * Math.sin(a), 0.8 + 0.1 * i] as const;
        return keyed(coilSource({ loops: 3, length: 0.06, law: COSINE, at, along: [Math.cos(b), Math.sin(b), 0] }));
      });
    const [here, there] = [solve(turned(0)), solve(turned(1))];
    expect(largestDifference(here, there, 1)).toBeLessThan(ROUNDING);
  });

  test('repeats as often as equal filaments stand on the ring', () => {
    const field = solve(ringSources(RING));
    expect(largestDifference(field, field, Math.PI / 6)).toBeLessThan(ROUNDING);
    expect(Array.from(field.series.harmonics).every((m) => m % 12 === 0)).toBe(true);
  });

  test('repeats three times where every fourth filament fails', () => {
    const charges = Array.from({ length: 12 }, (_, i) => (i % 4 === 0 ? 0 : 1));
    const field = solve(ringSources(RING), charges);
    expect(largestDifference(field, field, (2 * Math.PI) / 3)).toBeLessThan(2 * field.error + ROUNDING);
    expect(Array.from(field.series.harmonics).every((m) => m % 3 === 0)).toBe(true);
    expect(largestDifference(field, field, Math.PI / 6)).toBeGreaterThan(100 * field.error);
  });

  test('is mirrored with the plant', () => {
    // coils askew to the ring: none is its own mirror image
    const askew = (sign: number): KeyedSource[] =>
      [0, 1, 2, 4].map((i) => {
        const [a, b] = [sign * i, sign * (i + 0.9)];
        const at = [Math.cos(a), Math.sin(a), 0.9] as const;
        return keyed(
          coilSource({ loops: 4, length: 0.2, law: { kind: 'wire' }, at, along: [Math.cos(b), Math.sin(b), 0] }),
        );
      });
    const [one, other] = [askew(1), askew(-1)];
    const charges = [1, 2, 0.5, 1.5];
    expect(classCount([...one, ...other])).toBe(1);
    const [here, there] = [solve(one, charges), solve(other, charges)];
    expect([...here.rough, ...there.rough]).toEqual([]);
    expect(largestDifference(here, there, 0, -1)).toBeLessThan(ROUNDING);
    const both = solve([...one, ...other], [...charges, ...charges]);
    expect(largestDifference(both, both, 0, -1)).toBeLessThan(ROUNDING);
    expect(largestDifference(both, sumFields([here, there]))).toBeLessThan(both.error + here.error + there.error);
  });

  test('is linear in the charges', () => {
    const { shape, sources, masses } = seededPlant(11);
    const solver = createFieldSolver(shape, anyKernel());
    const other = masses.map((mass, i) => mass * (1 + Math.cos(i)));
    const [a, b, both] = [masses, other, masses.map((mass, i) => 2 * mass + other[i]!)].map((m) =>
      solver.solve(sources, m),
    );
    const bound = 2 * a!.error + b!.error + both!.error;
    PLACES.forEach(([r, angle]) => {
      const at = ({ series }: SmoothField): number => valueAtPolar(series, r * shape.rimRadius * 0.7, angle);
      expect(Math.abs(2 * at(a!) + at(b!) - at(both!))).toBeLessThan(bound);
    });
    expect([a, b, both].every((field) => field!.rough.length === 0)).toBe(true);
  });
});
