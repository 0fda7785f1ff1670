/** Zernike polynomials: order, norm, and fits over circle, annulus and hexagon. */
import { describe, expect, test } from 'vitest';
import { addTermsInto, apertureBasis, circleCoefficients, fitAperture } from '../../../engine/film/apertureZernike.ts';
import { apertureMean, apertureOf } from '../../../engine/film/aperture.ts';
import { termCount, zernikeInto, zernikeSet, zernikeTerms } from '../../../engine/film/zernike.ts';
import { createFace, type Face } from '../../../engine/geometry/face.ts';
import type { MirrorShape } from '../../../engine/geometry/mirrorShape.ts';
import { shapeOf } from '../../support/plants.ts';
import { gaussLegendre } from '../../support/quadrature.ts';

/** The accuracy asked for of planted coefficients that are near 1. */
const PLANTED = 1e-9;
/** Over the narrow annulus the circle's polynomials are all but dependent: telling them apart multiplies rounding by 1e8. */
const PLANTED_NARROW = 1e-6;
/** Sums of 5e3 products near 1; over the narrow annulus rounding grows by the polynomials' coefficients, to 5e-10. */
const ROUNDING = 1e-11;
const ROUNDING_NARROW = 2e-9;
const ORDER = 8;
const COUNT = termCount(ORDER);

const SHAPES: readonly (readonly [string, MirrorShape])[] = [
  ['circle', shapeOf({ rimRadius: 1.3 })],
  ['annulus', shapeOf({ rimRadius: 1.3, holeRadius: 0.35 })],
  ['annulus of half the radius', shapeOf({ rimRadius: 1, holeRadius: 0.5 })],
  ['narrow annulus', shapeOf({ rimRadius: 1, holeRadius: 0.9 })],
  ['hexagon', shapeOf({ rimRadius: 0.9, cornerAngle: 0.2 })],
  ['hexagon off axis', shapeOf({ rimRadius: 0.9, cornerAngle: 0, centerX: 3, curvature: 1 / 30 })],
  ['clear aperture within the glass', shapeOf({ holeRadius: 0.1, clearInnerRadius: 0.2, clearOuterRadius: 0.9 })],
];
const faces = new Map(SHAPES.map(([name, shape]) => [name, createFace(shape, 5000)]));
const names = [...faces.keys()];
const faceOf = (name: string): Face => faces.get(name)!;

/** A field from a function of the normalised place. */
function fieldOn(face: Face, value: (x: number, y: number) => number): Float64Array {
  const { radius, centerX } = apertureOf(face);
  const { count, position } = face.points;
  return Float64Array.from({ length: count }, (_, i) =>
    value((position[3 * i]! - centerX) / radius, position[3 * i + 1]! / radius),
  );
}

/** Made-up coefficients of both signs. */
const wanted = Float64Array.from({ length: COUNT }, (_, j) => Math.sin(3 * j + 1));

describe('on the unit circle', () => {
  test('the polynomials have their number, and every name once', () => {
    const terms = zernikeTerms(ORDER);
    expect(terms).toHaveLength(45);
    expect(new Set(terms.map(({ name }) => name)).size).toBe(45);
    expect(terms.map(({ noll }) => noll)).toEqual(terms.map((_, j) => j + 1));
  });

  test('they are orthonormal by a rule of the test’s own', () => {
    const set = zernikeSet(ORDER);
    const { nodes, weights } = gaussLegendre(20, 0, 1);
    const around = 40;
    const gram = new Float64Array(COUNT * COUNT);
    const z = new Float64Array(COUNT);
    nodes.forEach((rho, i) => {
      for (let q = 0; q < around; q++) {
        const phi = (2 * Math.PI * q) / around;
        zernikeInto(z, set, rho * Math.cos(phi), rho * Math.sin(phi));
        const weight = (2 * rho * weights[i]!) / around;
        for (let a = 0; a < COUNT; a++) for (let b = 0; b < COUNT; b++) gram[a * COUNT + b]! += weight * z[a]! * z[b]!;
      }
    });
    for (let a = 0; a < COUNT; a++)
      for (let b = 0; b < COUNT; b++) expect(Math.abs(gram[a * COUNT + b]! - (a === b ? 1 : 0))).toBeLessThan(ROUNDING);
  });
});

describe.each(names)('over the %s', (name) => {
  const face = faceOf(name);
  const basis = apertureBasis(face, ORDER);
  const rounding = name === 'narrow annulus' ? ROUNDING_NARROW : ROUNDING;

  test('no polynomial is left out', () => {
    expect(basis.isKept).toEqual(Array.from({ length: COUNT }, () => true));
  });

  test('the aperture’s polynomials are orthonormal by area', () => {
    const fields = Array.from({ length: COUNT }, (_, j) => {
      const one = new Float64Array(COUNT);
      one[j] = 1;
      return addTermsInto(new Float64Array(face.points.count), basis, one);
    });
    for (const a of [0, 1, 3, 10, 27, 44])
      for (const b of [0, 2, 3, 10, 21, 44]) {
        const product = fields[a]!.map((value, i) => value * fields[b]![i]!);
        expect(Math.abs(apertureMean(basis.aperture, product).value - (a === b ? 1 : 0))).toBeLessThan(rounding);
      }
  });

  test('planted coefficients of its own polynomials come back', () => {
    const field = addTermsInto(new Float64Array(face.points.count), basis, wanted);
    const found = fitAperture(basis, field);
    for (let j = 0; j < COUNT; j++) expect(Math.abs(found[j]! - wanted[j]!)).toBeLessThan(PLANTED);
  });

  test('planted coefficients of the circle’s polynomials come back', () => {
    const z = new Float64Array(COUNT);
    const field = fieldOn(face, (x, y) =>
      zernikeInto(z, basis.set, x, y).reduce((sum, value, j) => sum + wanted[j]! * value, 0),
    );
    const found = circleCoefficients(basis, fitAperture(basis, field));
    const within = name === 'narrow annulus' ? PLANTED_NARROW : PLANTED;
    for (let j = 0; j < COUNT; j++) expect(Math.abs(found[j]! - wanted[j]!)).toBeLessThan(within);
  });

  test('what is left after the fit is orthogonal to every polynomial, and the squares add up', () => {
    const field = fieldOn(face, (x, y) => Math.exp(x - 0.7 * y) + 0.1 * Math.abs(x));
    const found = fitAperture(basis, field);
    const rest = addTermsInto(
      field.slice(),
      basis,
      found.map((value) => -value),
    );
    for (const value of fitAperture(basis, rest)) expect(Math.abs(value)).toBeLessThan(rounding);
    const square = (values: Float64Array): number =>
      apertureMean(
        basis.aperture,
        values.map((value) => value * value),
      ).value;
    const explained = found.reduce((sum, value) => sum + value * value, 0);
    expect(Math.abs(square(rest) + explained - square(field))).toBeLessThan(rounding);
    expect(square(rest)).toBeGreaterThan(0);
  });
});

test('over a circle the aperture’s polynomials are the circle’s, to within the quadrature', () => {
  // panels of five Gauss–Lobatto nodes integrate products of order 16 to 2.9e-6 on 5,000 points
  const QUADRATURE = 5e-6;
  const { fromCircle } = apertureBasis(faceOf('circle'), ORDER);
  for (let i = 0; i < COUNT; i++)
    for (let j = 0; j <= i; j++)
      expect(Math.abs(fromCircle[i * COUNT + j]! - (i === j ? 1 : 0))).toBeLessThan(QUADRATURE);
});

test('an aperture too thin to tell polynomials apart leaves the later ones out', () => {
  const face = createFace(shapeOf({ rimRadius: 1, holeRadius: 0.9999 }), 500);
  const basis = apertureBasis(face, ORDER);
  expect(basis.isKept[0]).toBe(true);
  expect(basis.isKept.filter((kept) => !kept).length).toBeGreaterThan(0);
  const found = fitAperture(
    basis,
    fieldOn(face, () => 2),
  );
  expect(Math.abs(found[0]! - 2)).toBeLessThan(PLANTED);
  for (let j = 1; j < COUNT; j++) expect(Math.abs(found[j]!)).toBeLessThan(PLANTED);
});
