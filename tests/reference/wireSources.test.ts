/**
 * Straight wires, Lambert's law on a cylinder: I = sinα/π², α from the wire's axis.
 *
 * Closed forms evaluated and checked by quadrature; they follow L. Holland & W. Steckelmacher, Vacuum 2 (1952) 346.
 */
import { xoroshiro128plus } from 'pure-rand/generator/xoroshiro128plus';
import { uniformFloat64 } from 'pure-rand/distribution/uniformFloat64';
import { expect, test } from 'vitest';
import { sampleDirectionInto } from '../../engine/emission/sampleDirection.ts';
import type { EmissionLaw } from '../../engine/emission/emissionLaw.ts';
import { metres, plantOf, planeReceivers, relativeError, unshadowedDeposit, type Vector } from '../support/plants.ts';

/** Half a unit of the tables' eighth decimal. */
const DIGIT = 0.5e-8 * (1 + 1e-6);
/** Eight Gauss–Legendre pieces on each run of at most h/2: below 1e-12 of the closed form. */
const PIECES = 1e-11;
/** On runs that grow by half from 4 h outwards the rule leaves 1e-10. */
const GRADED = 1e-10;
const HEIGHT = 1;

/** Deposit per kilogram at h = 1 under a wire along x with the given corners, centred over the origin. */
function underWire(corners: readonly number[], places: readonly (readonly [number, number])[]): Float64Array {
  const reach = 2 * Math.max(...corners) + 1;
  const plant = plantOf({
    mirror: { radiusOfCurvature: 'flat', outerDiameter: '1 m' },
    tank: { diameter: metres(reach + 1), depth: '4 m', behindMirror: '1 m' },
    filamentTypes: {
      wire: { emission: { law: 'straight wire' }, path: corners.map((x) => [metres(x), '0 m', '0 m']) },
    },
    filaments: [
      {
        arrangement: 'list',
        name: 'wire',
        type: 'wire',
        charge: '1 kg',
        filaments: [{ position: ['0 m', '0 m', metres(HEIGHT)], axis: [1, 0, 0] }],
      },
    ],
  });
  return unshadowedDeposit(plant, planeReceivers(places));
}

/** Corners of a straight wire of a length, no run longer than h/2. */
function straight(length: number): number[] {
  const runs = Math.ceil(length / (HEIGHT / 2));
  return Array.from({ length: runs + 1 }, (_, i) => length * (i / runs - 0.5));
}

/** T of a wire of length L, h = 1. */
function finiteWire(length: number, x: number, y: number): number {
  const d = Math.hypot(1, y);
  const g = (u: number): number => u / (2 * d * (u * u + d * d)) + Math.atan(u / d) / (2 * d * d);
  return (g(x + length / 2) - g(x - length / 2)) / (Math.PI ** 2 * length);
}

const PLACES = [
  [0, 0],
  [1, 0],
  [0, 1],
  [1, 1],
  [2, 0],
] as const;

test.each([
  [0.2, [0.10065173, 0.02549903, 0.03570357, 0.01595632, 0.00407343]],
  [1, [0.0875058, 0.02941782, 0.03313743, 0.01671431, 0.00459924]],
  [2, [0.06511903, 0.03817652, 0.0275311, 0.01806963, 0.00667827]],
])('a wire of length %d h gives the tabled deposits', (length, tabled) => {
  const deposit = underWire(straight(length), PLACES);
  tabled.forEach((value, i) => {
    expect(Math.abs(deposit[i]! - value)).toBeLessThanOrEqual(DIGIT);
    expect(relativeError(deposit[i]!, finiteWire(length, PLACES[i]![0], PLACES[i]![1]))).toBeLessThan(PIECES);
  });
});

test('a wire of 2000 h is endless', () => {
  // t = m' h/(2π ρ (h² + y²)); runs grow by half from h/2 near the middle, where the receivers are
  const half = [0];
  for (let step = 0.5; half.at(-1)! < 1000; step *= half.at(-1)! < 4 ? 1 : 1.5) half.push(half.at(-1)! + step);
  half[half.length - 1] = 1000;
  const corners = [
    ...half
      .slice(1)
      .map((x) => -x)
      .toReversed(),
    ...half,
  ];
  const deposit = underWire(
    corners,
    [0, 0.5, 1, 2].map((y) => [0, y] as const),
  );
  [0.15915494, 0.12732395, 0.07957747, 0.03183099].forEach((value, i) => {
    const y = [0, 0.5, 1, 2][i]!;
    expect(Math.abs(deposit[i]! * 2000 - value)).toBeLessThanOrEqual(1e-8); // half a unit of the table, and what is missing
    // what lies beyond ±1000 h is missing: (4/3π)(d/u)³ of the whole, d² = h² + y², u = 1000 h
    const missing = (4 / (3 * Math.PI)) * (Math.hypot(1, y) / 1000) ** 3;
    expect(relativeError(deposit[i]! * 2000, (1 - missing) / (2 * Math.PI * (1 + y * y)))).toBeLessThan(GRADED);
  });
});

test('a very short wire falls off as a point along its axis and across it', () => {
  const deposit = underWire([-5e-5, 5e-5], [[0, 0], ...[0.5, 1, 2].flatMap((x) => [[x, 0] as const, [0, x] as const])]);
  const SHORT = 1e-8; // (L/h)² = 1e-8 times a factor near 1
  expect(relativeError(deposit[0]!, 1 / Math.PI ** 2)).toBeLessThan(SHORT);
  expect(Math.abs(deposit[0]! - 0.10132118)).toBeLessThan(DIGIT);
  [0.5, 1, 2].forEach((x, i) => {
    expect(relativeError(deposit[1 + 2 * i]!, (1 + x * x) ** -2 / Math.PI ** 2)).toBeLessThan(SHORT);
    expect(relativeError(deposit[2 + 2 * i]!, (1 + x * x) ** -1.5 / Math.PI ** 2)).toBeLessThan(SHORT);
  });
});

test('a short upright wire leaves its foot bare and coats most at h/√3', () => {
  const plant = plantOf({
    mirror: { radiusOfCurvature: 'flat', outerDiameter: '1 m' },
    tank: { diameter: '10 m', depth: '4 m' },
    filamentTypes: { upright: { emission: { law: 'straight wire' } } },
    filaments: [
      {
        arrangement: 'list',
        name: 'wire',
        type: 'upright',
        charge: '1 kg',
        axis: 'axial',
        filaments: [{ position: ['0 m', '0 m', '1 m'] }],
      },
    ],
  });
  const peak = 1 / Math.sqrt(3);
  const rhos = [0, peak - 0.01, peak, peak + 0.01, 1.3];
  const deposit = unshadowedDeposit(plant, planeReceivers(rhos.map((rho) => [rho, 0])));
  expect(deposit[0]).toBe(0);
  expect(Math.abs(deposit[2]! - 0.03290502)).toBeLessThanOrEqual(DIGIT);
  expect(deposit[1]!).toBeLessThan(deposit[2]!);
  expect(deposit[3]!).toBeLessThan(deposit[2]!);
  rhos.slice(1).forEach((rho, i) => {
    expect(relativeError(deposit[i + 1]!, rho / (1 + rho * rho) ** 2 / Math.PI ** 2)).toBeLessThan(1e-13); // rounding
  });
});

/** Standard errors that no bin of a fixed seed may exceed: 24 bins, chance below 2e-3 for a correct sampler. */
const STANDARD_ERRORS = 4;
const BINS = 6;
/** Shares of emission in 15° bins from the axis, 0–90°: (2/π)·∫ sin²α dα, both sides of the plane across the wire. */
const THEORY = [0.00376, 0.02508, 0.06201, 0.10466, 0.14159, 0.16291];

const bin = (cosAxis: number): number =>
  Math.min(BINS - 1, Math.floor((Math.acos(Math.abs(cosAxis)) * 2 * BINS) / Math.PI));

/** Mean and standard error of the weight that falls into each bin. */
function histogram(count: number, draw: () => { readonly cosAxis: number; readonly weight: number }) {
  const sums = new Float64Array(BINS);
  const squares = new Float64Array(BINS);
  for (let k = 0; k < count; k++) {
    const { cosAxis, weight } = draw();
    sums[bin(cosAxis)]! += weight;
    squares[bin(cosAxis)]! += weight * weight;
  }
  return Array.from(sums, (sum, i) => {
    const mean = sum / count;
    return { mean, error: Math.sqrt((squares[i]! / count - mean * mean) / count) };
  });
}

test('the closed form of the bins is the published one', () => {
  THEORY.forEach((share, i) => {
    const antiderivative = (a: number): number => a / 2 - Math.sin(2 * a) / 4;
    const exact = (2 / Math.PI) * (antiderivative(((i + 1) * Math.PI) / 12) - antiderivative((i * Math.PI) / 12));
    expect(Math.abs(exact - share)).toBeLessThan(1e-5);
  });
});

test('directions drawn for a wire fill 15° bins as sin²α', () => {
  const random = xoroshiro128plus(1952);
  const axis = Float64Array.of(0.6, -0.48, 0.64);
  const out = new Float64Array(3);
  const bins = histogram(400_000, () => {
    const weight = sampleDirectionInto(out, { kind: 'wire' }, axis, uniformFloat64(random), uniformFloat64(random));
    return { cosAxis: out[0]! * axis[0]! + out[1]! * axis[1]! + out[2]! * axis[2]!, weight };
  });
  bins.forEach(({ mean, error }, i) => {
    const antiderivative = (a: number): number => a / 2 - Math.sin(2 * a) / 4;
    const exact = (4 / Math.PI) * (antiderivative(((i + 1) * Math.PI) / 12) - antiderivative((i * Math.PI) / 12));
    expect(Math.abs(mean - exact)).toBeLessThan(STANDARD_ERRORS * error);
  });
});

/** A direction by Lambert's law about a unit normal. */
function lambert(n: Vector, u1: number, u2: number): Vector {
  const helper: Vector = Math.abs(n[2]) < 0.9 ? [0, 0, 1] : [1, 0, 0];
  const t = cross(helper, n);
  const length = Math.hypot(...t);
  const a: Vector = [t[0] / length, t[1] / length, t[2] / length];
  const b = cross(n, a);
  const [sin, cos, turn] = [Math.sqrt(u1), Math.sqrt(1 - u1), 2 * Math.PI * u2];
  const along = (k: 0 | 1 | 2): number => sin * (Math.cos(turn) * a[k] + Math.sin(turn) * b[k]) + cos * n[k];
  return [along(0), along(1), along(2)];
}

function cross(a: Vector, b: Vector): Vector {
  return [a[1] * b[2] - a[2] * b[1], a[2] * b[0] - a[0] * b[2], a[0] * b[1] - a[1] * b[0]];
}

test.each([
  ['a straight wire along z', { kind: 'wire' }, false],
  ['the turns of an open coil about z', { kind: 'coil' }, true],
] as const)('Lambert emission from the surface of %s follows its law', (_, law: EmissionLaw, isCoil) => {
  // the reference knows only Lambert's law and where the metal is; the engine's law is integrated by drawing from it
  const random = xoroshiro128plus(20240);
  const next = (): number => uniformFloat64(random);
  const surface = histogram(400_000, () => {
    const [turn, around] = [2 * Math.PI * next(), 2 * Math.PI * next()];
    const wire: Vector = isCoil ? [-Math.sin(turn), Math.cos(turn), 0] : [0, 0, 1];
    const p: Vector = isCoil ? [Math.cos(turn), Math.sin(turn), 0] : [1, 0, 0];
    const q = cross(wire, p);
    const [c, s] = [Math.cos(around), Math.sin(around)];
    const normal: Vector = [c * p[0] + s * q[0], c * p[1] + s * q[1], c * p[2] + s * q[2]];
    return { cosAxis: lambert(normal, next(), next())[2], weight: 1 };
  });
  const out = new Float64Array(3);
  const axis = Float64Array.of(0, 0, 1);
  const drawn = histogram(400_000, () => {
    const weight = sampleDirectionInto(out, law, axis, next(), next());
    return { cosAxis: out[2]!, weight };
  });
  surface.forEach(({ mean, error }, i) => {
    const other = drawn[i]!;
    expect(Math.abs(mean - other.mean)).toBeLessThan(STANDARD_ERRORS * Math.hypot(error, other.error));
  });
});
