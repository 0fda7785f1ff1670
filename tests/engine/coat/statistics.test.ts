import { describe, expect, test } from 'vitest';
import { faceWeights } from '../../../engine/coat/faceWeights.ts';
import { statisticsOf, massOnFace, type Estimate, type Statistics } from '../../../engine/coat/statistics.ts';
import { createFace, type Face } from '../../../engine/geometry/face.ts';
import type { MirrorShape } from '../../../engine/geometry/mirrorShape.ts';
import { relativeError, shapeOf } from '../../support/plants.ts';
import { gaussLegendre } from '../../support/quadrature.ts';

/** Polynomials that the rule integrates exactly: a few thousand roundings remain. */
const EXACT = 1e-12;

type Field = (x: number, y: number) => number;

const valuesOn = (face: Face, field: Field): Float64Array =>
  Float64Array.from({ length: face.points.count }, (_, i) =>
    field(face.points.position[3 * i]!, face.points.position[3 * i + 1]!),
  );

function statistics(overrides: Partial<MirrorShape>, field: Field, points = 4000, tolerance = 0.1): Statistics {
  const face = createFace(shapeOf(overrides), points);
  return statisticsOf(face, faceWeights(face), [], valuesOn(face, field), tolerance, { value: 0, error: 0 });
}

describe('a coat a + b r² on a flat disc', () => {
  const [a, b, tolerance] = [1, 0.4, 0.1];
  const found = statistics({}, (x, y) => a + b * (x * x + y * y), 4000, tolerance);
  // u = r² is even over [0, 1] on a disc of radius 1, so that every number is elementary
  const mean = a + b / 2;

  test('has its mean, RMS and edge ratio', () => {
    expect(relativeError(found.mean.value, mean)).toBeLessThan(EXACT);
    expect(relativeError(found.rms.value, b / Math.sqrt(12) / mean)).toBeLessThan(EXACT);
    expect(relativeError(found.edgeRatio.value, (a + (b * (1 + 0.98 ** 2)) / 2) / mean)).toBeLessThan(EXACT);
  });

  test('has its minimum in the middle, its maximum at the rim, and their uniformity', () => {
    expect(relativeError(found.minimum.value, a)).toBeLessThan(EXACT);
    expect(Math.hypot(...found.minimum.position)).toBeLessThan(1e-12);
    expect(relativeError(found.maximum.value, a + b)).toBeLessThan(EXACT);
    expect(Math.abs(Math.hypot(...found.maximum.position) - 1)).toBeLessThan(1e-12);
    expect(relativeError(found.uniformity.value, b / (2 * a + b))).toBeLessThan(EXACT);
  });

  test('has the fraction of its area inside the tolerance, within its error', () => {
    const exact = (2 * tolerance * mean) / b;
    expect(Math.abs(found.fractionInside.value - exact)).toBeLessThan(found.fractionInside.error);
    expect(found.fractionInside.error).toBeLessThan(0.01);
  });

  test('is judged over the clear aperture alone', () => {
    const {
      mean: clear,
      minimum,
      maximum,
    } = statistics({ clearInnerRadius: 0.5, clearOuterRadius: 0.8 }, (x, y) => a + b * (x * x + y * y));
    expect(relativeError(clear.value, a + (b * (0.25 + 0.64)) / 2)).toBeLessThan(EXACT);
    expect(relativeError(minimum.value, a + b * 0.25)).toBeLessThan(EXACT);
    expect(relativeError(maximum.value, a + b * 0.64)).toBeLessThan(EXACT);
  });
});

test('an even coat is even, to rounding, on any face', () => {
  for (const overrides of [
    {},
    { cornerAngle: 0.3, holeRadius: 0.2 },
    { curvature: 0.4, conicConstant: -1, centerX: 1.5 },
  ]) {
    const found = statistics(overrides, () => 7e-8);
    expect(relativeError(found.mean.value, 7e-8)).toBeLessThan(EXACT);
    expect(found.rms.value).toBeLessThan(EXACT);
    expect(found.uniformity.value).toBeLessThan(EXACT);
    expect(found.fractionInside.value).toBe(1);
    expect(relativeError(found.edgeRatio.value, 1)).toBeLessThan(EXACT);
  }
});

test('a bare mirror has numbers, not NaN', () => {
  const found = statistics({}, () => 0);
  for (const { value, error } of Object.values(found) as Estimate[]) {
    expect(Number.isFinite(value)).toBe(true);
    expect(Number.isFinite(error)).toBe(true);
  }
  expect(found.mean.value).toBe(0);
});

describe('an extreme between the nodes', () => {
  test.each<[number, number]>([
    [0.317, 0.128],
    [-0.05, 0.61],
    [0.01, -0.015],
    [0.002, -0.003], // next to the middle, where the cells of every azimuth meet
  ])('is found at (%d, %d)', (x0, y0) => {
    // a quadratic in x and y; a cell's polynomial of degree 4 in polar coordinates leaves 1e-7
    const dome: Field = (x, y) => 1 - 0.3 * (x - x0) ** 2 - 0.2 * (y - y0) ** 2;
    const { maximum } = statistics({ holeRadius: 0 }, dome);
    expect(Math.abs(maximum.value - 1)).toBeLessThan(1e-7);
    expect(Math.hypot(maximum.position[0] - x0, maximum.position[1] - y0)).toBeLessThan(1e-3);
    const { minimum } = statistics({}, (x, y) => 2 - dome(x, y));
    expect(Math.abs(minimum.value - 1)).toBeLessThan(1e-7);
  });
});

/** Smooth fields like those that filaments make, 1 at about their greatest. */
const SMOOTH: Readonly<Record<string, Field>> = {
  'one cosine source': (x, y) => (1 + (x - 0.3) ** 2 + (y + 0.2) ** 2) ** -2,
  'a near isotropic source': (x, y) => (1 + 2 * ((x - 0.5) ** 2 + (y - 0.1) ** 2)) ** -1.5,
  'twelve ripples': (x, y) => 1 + 0.05 * Math.cos(12 * Math.atan2(y, x)) * (x * x + y * y) ** 6,
  'a slope': (x, y) => 1 + 0.2 * x - 0.1 * y,
};

/** Slow reference over an annulus: Gauss–Legendre in r, the trapezoid rule, exponentially good, in azimuth. */
function reference(field: Field, inner: number, outer: number): { readonly mean: number; readonly rms: number } {
  const { nodes, weights } = gaussLegendre(48, inner, outer);
  const steps = 480;
  let [area, sum, squares] = [0, 0, 0];
  nodes.forEach((r, i) => {
    for (let k = 0; k < steps; k++) {
      const angle = (2 * Math.PI * (k + 0.5)) / steps;
      const value = field(r * Math.cos(angle), r * Math.sin(angle));
      const weight = (weights[i]! * r) / steps;
      area += weight;
      sum += weight * value;
      squares += weight * value * value;
    }
  });
  const mean = sum / area;
  return { mean, rms: Math.sqrt(squares / area - mean * mean) / mean };
}

describe.each(Object.entries(SMOOTH))('stated errors cover the true ones for %s', (_, field) => {
  const exact = reference(field, 0.15, 1);
  const edge = reference(field, 0.98, 1);

  test.each([700, 2000, 8000, 20_000])('on %d points', (points) => {
    const found = statistics({ holeRadius: 0.15 }, field, points);
    const covers = ({ value, error }: Estimate, truth: number): void =>
      expect(Math.abs(value - truth)).toBeLessThanOrEqual(error + EXACT * Math.abs(truth));
    covers(found.mean, exact.mean);
    covers(found.rms, exact.rms);
    covers(found.edgeRatio, edge.mean / exact.mean);
    // extremes against a fine scan
    let [low, high] = [Infinity, -Infinity];
    for (let i = 0; i <= 400; i++) {
      for (let k = 0; k < 1440; k++) {
        const r = 0.15 + (0.85 * i) / 400;
        const value = field(r * Math.cos((Math.PI * k) / 720), r * Math.sin((Math.PI * k) / 720));
        low = Math.min(low, value);
        high = Math.max(high, value);
      }
    }
    const SCAN = 3e-6; // the scan's own step of 2 to 4 mm: half of it squared, times the curvature
    expect(Math.abs(found.minimum.value - low)).toBeLessThanOrEqual(found.minimum.error + SCAN);
    expect(Math.abs(found.maximum.value - high)).toBeLessThanOrEqual(found.maximum.error + SCAN);
  });
});

describe('the mean converges', () => {
  /** Errors of the mean of a field on an annulus, from 600 to 20,000 points; `step` is the width of a radial panel. */
  const errorsOf = (field: Field) => {
    const exact = reference(field, 0.15, 1).mean;
    const area = Math.PI * (1 - 0.15 ** 2);
    return [600, 1200, 2400, 4800, 9600, 19_200].map((points) => {
      const face = createFace(shapeOf({ holeRadius: 0.15 }), points);
      const { value, error } = massOnFace(faceWeights(face), [], valuesOn(face, field));
      const panels = face.grid.zones.filter((zone) => zone === 'clear').length;
      return { step: 1 / panels, off: Math.abs(value / area - exact), stated: error / area };
    });
  };

  test('with order eight in the radius, its stated error with order four', () => {
    // five-point Gauss–Lobatto is exact to degree 7: h⁸; the embedded Simpson rule to degree 3: h⁴. In azimuth the
    // field repeats, which every composite rule integrates exponentially well: a round field shows the radius alone
    const errors = errorsOf((x, y) => (x * x + y * y) ** 6);
    // measured 7.98 and 3.89
    expect(Math.abs(slope(errors, 'off') - 8)).toBeLessThan(0.5);
    expect(Math.abs(slope(errors, 'stated') - 4)).toBeLessThan(0.3);
    for (const { off, stated } of errors) expect(off).toBeLessThan(stated);
  });

  test('at least as fast for a field without symmetry', () => {
    const errors = errorsOf((x, y) => (1 + 6 * ((x - 0.3) ** 2 + (y + 0.2) ** 2)) ** -2);
    expect(slope(errors, 'off')).toBeGreaterThan(7.5);
    expect(slope(errors, 'stated')).toBeGreaterThan(3.5);
    for (const { off, stated } of errors) expect(off).toBeLessThan(stated);
  });
});

/** Least-squares slope of ln(error) against ln(step). */
function slope(
  grids: readonly { readonly step: number; readonly off: number; readonly stated: number }[],
  key: 'off' | 'stated',
): number {
  const [x, y] = [grids.map(({ step }) => Math.log(step)), grids.map((grid) => Math.log(grid[key]))];
  const mean = (list: readonly number[]): number => list.reduce((sum, value) => sum + value, 0) / list.length;
  const [mx, my] = [mean(x), mean(y)];
  return (
    x.reduce((sum, value, i) => sum + (value - mx) * (y[i]! - my), 0) /
    x.reduce((sum, value) => sum + (value - mx) ** 2, 0)
  );
}
