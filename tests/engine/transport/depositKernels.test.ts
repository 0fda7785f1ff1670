import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { emissionTable } from '../../../engine/emission/emissionTable.ts';
import { emittedIntensity, type EmissionLaw } from '../../../engine/emission/emissionLaw.ts';
import { addAny, addDepositInto } from '../../../engine/transport/depositKernels.ts';
import { computeColumn } from '../../../engine/transport/column.ts';
import { createVisibility } from '../../../engine/transport/visibility.ts';
import { plantOf, pointSource, receivers, relativeError, sceneOf, type Vector } from '../../support/plants.ts';

interface Case {
  readonly name: string;
  readonly law: EmissionLaw;
  /** relative bound of kernel against readable form over the geometries below */
  readonly bound: number;
}

/** A dozen roundings; powers multiply those of the cosine. */
const ROUNDING = 1e-14;
/** The stated error of the fast elliptic integral, 3.5e-8, and roundings. */
const FAST_E = 3.6e-8;
/** Intensities whose cosine the readable form rounds first: sinθ = √(1 − cos²θ) cancels where the wire points at the point. */
const CASES: readonly Case[] = [
  { name: 'isotropic', law: { kind: 'isotropic' }, bound: ROUNDING },
  { name: 'cos¹', law: { kind: 'cosine', power: 1 }, bound: ROUNDING },
  { name: 'cos⁰', law: { kind: 'cosine', power: 0 }, bound: ROUNDING },
  { name: 'cos²', law: { kind: 'cosine', power: 2 }, bound: ROUNDING },
  { name: 'cos³', law: { kind: 'cosine', power: 3 }, bound: ROUNDING },
  { name: 'cos^2.4', law: { kind: 'cosine', power: 2.4 }, bound: ROUNDING },
  { name: 'cos^12', law: { kind: 'cosine', power: 12 }, bound: ROUNDING },
  { name: 'wire', law: { kind: 'wire' }, bound: 1e-10 },
  { name: 'coil', law: { kind: 'coil' }, bound: FAST_E },
  {
    name: 'table',
    law: { kind: 'table', table: emissionTable([0, 0.5, 1.2, 2.5], [1, 2, 1.5, 0.1]) },
    bound: ROUNDING,
  },
];

const coordinate = fc.integer({ min: -2000, max: 2000 }).map((mm) => mm / 1000);
const place = fc.tuple(coordinate, coordinate, coordinate);
const unit = place
  .filter((v) => Math.hypot(...v) > 0.1)
  .map((v): Vector => {
    const length = Math.hypot(...v);
    return [v[0] / length, v[1] / length, v[2] / length];
  });

describe.each(CASES)('the $name kernel', ({ law, bound }) => {
  test('equals the readable form', () => {
    fc.assert(
      fc.property(place, unit, place, unit, (at, axis, point, normal) => {
        const source = pointSource(law, at, axis, 0.7);
        const points = receivers([{ point, normal }]);
        const [fast, readable] = [new Float64Array(1), new Float64Array(1)];
        const d: Vector = [point[0] - at[0], point[1] - at[1], point[2] - at[2]];
        const r = Math.hypot(...d);
        const cosEmit = (d[0] * axis[0] + d[1] * axis[1] + d[2] * axis[2]) / r;
        // nearer, the readable form's own roundings of a cosine near 0 or 1 are all that differs
        fc.pre(r > 0.01 && Math.abs(cosEmit) > 1e-3 && Math.abs(cosEmit) < 1 - 1e-6);
        fc.pre(Math.abs(d[0] * normal[0] + d[1] * normal[1] + d[2] * normal[2]) > 1e-3 * r);
        addDepositInto(fast, points, 0, 1, source, 0);
        addAny(readable, points, 0, 1, source, 0, (c) => emittedIntensity(law, c));
        if (readable[0] === 0) expect(fast[0]).toBe(0);
        else
          expect(relativeError(fast[0]!, readable[0]!)).toBeLessThan(
            bound * (law.kind === 'cosine' ? 1 + law.power / Math.abs(cosEmit) : 1),
          );
      }),
      { seed: 41, numRuns: 4000, endOnFailure: true },
    );
  });

  test('is linear in the weight and adds to what is there', () => {
    const points = receivers([{ point: [0.3, -0.2, 0], normal: [0, 0, 1] }]);
    const deposit = (weight: number, before = 0): number => {
      const out = Float64Array.of(before);
      addDepositInto(out, points, 0, 1, pointSource(law, [0, 0.1, 1], [0.6, 0, -0.8], weight), 0);
      return out[0]!;
    };
    expect(deposit(1)).toBeGreaterThan(0);
    expect(deposit(4)).toBe(4 * deposit(1)); // a power of two scales without rounding
    expect(relativeError(deposit(3), 3 * deposit(1))).toBeLessThan(ROUNDING);
    expect(deposit(0)).toBe(0);
    expect(deposit(1, 0.5)).toBe(0.5 + deposit(1));
  });

  test('leaves the back of a receiver and a grazing one bare', () => {
    const points = receivers([
      { point: [0.3, 0, 0], normal: [0, 0, -1] },
      { point: [0.3, 0, 1], normal: [0, 0, 1] }, // in the plane of the source: arrives edge-on
    ]);
    const out = new Float64Array(2);
    addDepositInto(out, points, 0, 2, pointSource(law, [0, 0, 1], [0.6, 0, -0.8]), 0);
    expect([...out]).toEqual([0, 0]);
  });

  test('falls with the square of the distance', () => {
    const points = receivers(
      [1, 2].map((k) => ({ point: [0.3 * k, 0.1 * k, -k] as const, normal: [0, 0, 1] as const })),
    );
    const out = new Float64Array(2);
    addDepositInto(out, points, 0, 2, pointSource(law, [0, 0, 0], [0.6, 0, -0.8]), 0);
    expect(relativeError(out[0]!, 4 * out[1]!)).toBeLessThan(ROUNDING);
  });
});

test('a cosine source leaves what lies behind it bare', () => {
  const points = receivers([{ point: [0, 0, 2], normal: [0, 0, -1] }]);
  for (const power of [0, 1, 2, 2.5]) {
    const out = new Float64Array(1);
    addDepositInto(out, points, 0, 1, pointSource({ kind: 'cosine', power }, [0, 0, 1], [0, 0, -1]), 0);
    expect(out[0]).toBe(0);
  }
});

test('a wire leaves what it points at bare, a coil coats it most', () => {
  const points = receivers([
    { point: [0, 0, 0], normal: [0, 0, 1] },
    { point: [1, 0, 1], normal: [-1, 0, 0] },
  ]);
  const [wire, coil] = [new Float64Array(2), new Float64Array(2)];
  addDepositInto(wire, points, 0, 2, pointSource({ kind: 'wire' }, [0, 0, 1], [0, 0, 1]), 0);
  addDepositInto(coil, points, 0, 2, pointSource({ kind: 'coil' }, [0, 0, 1], [0, 0, 1]), 0);
  expect(wire[0]).toBe(0);
  expect(relativeError(wire[1]!, 1 / Math.PI ** 2)).toBeLessThan(ROUNDING);
  expect(relativeError(coil[0]!, 1 / Math.PI ** 2)).toBeLessThan(FAST_E); // E(0) = π/2
  expect(relativeError(coil[1]!, 2 / Math.PI ** 3)).toBeLessThan(FAST_E); // E(1) = 1
});

test('a filament’s column is the sum of its loops, at their stated places', () => {
  // loop j sits at (j − (k−1)/2)·L/k from the centre and carries its clips' share
  const plant = plantOf({
    mirror: { radiusOfCurvature: 'flat', outerDiameter: '1 m' },
    tank: { diameter: '2 m', depth: '2 m' },
    filamentTypes: {
      helix: { loops: 3, length: '90 mm', clipMass: '10 mg', clipsPerLoop: [1, 0, 3], emission: { law: 'open coil' } },
    },
    filaments: [
      {
        arrangement: 'ring',
        name: 'one',
        type: 'helix',
        count: 1,
        diameter: '0.6 m',
        height: '0.7 m',
        startAngle: '90 deg',
      },
    ],
  });
  const { source, charge } = plant.filaments[0]!;
  expect(relativeError(charge, 40e-6)).toBeLessThan(ROUNDING);
  expect([...source.weight]).toEqual([0.25, 0, 0.75]);
  const points = receivers([{ point: [0.2, -0.1, 0], normal: [0, 0, 1] }]);
  const { deposit } = computeColumn(source, points, createVisibility(sceneOf()));
  const law: EmissionLaw = { kind: 'coil' };
  let expected = 0;
  // tangential at 90° points to −x
  for (const [x, weight] of [
    [0.03, 0.25],
    [-0.03, 0.75],
  ] as const) {
    const d: Vector = [0.2 - x, -0.4, -0.7];
    const r = Math.hypot(...d);
    expected += (weight * emittedIntensity(law, -d[0] / r) * 0.7) / r ** 3;
  }
  expect(relativeError(deposit[0]!, expected)).toBeLessThan(FAST_E);
});
