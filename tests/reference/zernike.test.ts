/** Zernike polynomials against published orders and closed forms, over the circle and the annulus. */
import { describe, expect, test } from 'vitest';
import { addTermsInto, apertureBasis } from '../../engine/film/apertureZernike.ts';
import { zernikeInto, zernikeSet, zernikeTerms } from '../../engine/film/zernike.ts';
import { createFace } from '../../engine/geometry/face.ts';
import { shapeOf } from '../support/plants.ts';

/** A few products of numbers near 1. */
const ROUNDING = 1e-12;

test('Noll’s order is the published one', () => {
  // documentation of the general-purpose library zernike 0.2.0 (docs.rs), table of j, n, m
  const terms = zernikeTerms(5);
  expect(terms.map(({ n }) => n)).toEqual([0, 1, 1, 2, 2, 2, 3, 3, 3, 3, 4, 4, 4, 4, 4, 5, 5, 5, 5, 5, 5]);
  expect(terms.map(({ m }) => m)).toEqual([0, 1, 1, 0, 2, 2, 1, 1, 3, 3, 0, 2, 2, 4, 4, 1, 1, 3, 3, 5, 5]);
  // R. J. Noll, JOSA 66 (1976) 207: even j goes as cos, odd j as sin
  for (const { noll, m, isSine } of terms) if (m > 0) expect(isSine).toBe(noll % 2 === 1);
});

describe('over the circle', () => {
  // R. J. Noll, JOSA 66 (1976) 207, table I (from memory of the table)
  const forms: readonly (readonly [number, (r: number, p: number) => number])[] = [
    [1, () => 1],
    [2, (r, p) => 2 * r * Math.cos(p)],
    [3, (r, p) => 2 * r * Math.sin(p)],
    [4, (r) => Math.sqrt(3) * (2 * r ** 2 - 1)],
    [5, (r, p) => Math.sqrt(6) * r ** 2 * Math.sin(2 * p)],
    [6, (r, p) => Math.sqrt(6) * r ** 2 * Math.cos(2 * p)],
    [7, (r, p) => Math.sqrt(8) * (3 * r ** 3 - 2 * r) * Math.sin(p)],
    [8, (r, p) => Math.sqrt(8) * (3 * r ** 3 - 2 * r) * Math.cos(p)],
    [9, (r, p) => Math.sqrt(8) * r ** 3 * Math.sin(3 * p)],
    [10, (r, p) => Math.sqrt(8) * r ** 3 * Math.cos(3 * p)],
    [11, (r) => Math.sqrt(5) * (6 * r ** 4 - 6 * r ** 2 + 1)],
    [22, (r) => Math.sqrt(7) * (20 * r ** 6 - 30 * r ** 4 + 12 * r ** 2 - 1)],
    [37, (r) => 3 * (70 * r ** 8 - 140 * r ** 6 + 90 * r ** 4 - 20 * r ** 2 + 1)],
  ];

  test.each(forms)('Z%i is its closed form', (noll, form) => {
    const set = zernikeSet(8);
    const out = new Float64Array(45);
    for (const r of [0, 0.3, 0.71, 1])
      for (const p of [0, 1, 2.5, 4]) {
        zernikeInto(out, set, r * Math.cos(p), r * Math.sin(p));
        expect(Math.abs(out[noll - 1]! - form(r, p))).toBeLessThan(ROUNDING);
      }
  });
});

describe('over an annulus', () => {
  // V. N. Mahajan, JOSA 71 (1981) 75, table of annular polynomials (from memory of the table; each is orthonormal by
  // its own integral), ε the ratio of the radii
  const forms: readonly (readonly [number, (r: number, p: number, e: number) => number])[] = [
    [1, () => 1],
    [2, (r, p, e) => (2 * r * Math.cos(p)) / Math.sqrt(1 + e ** 2)],
    [3, (r, p, e) => (2 * r * Math.sin(p)) / Math.sqrt(1 + e ** 2)],
    [4, (r, _p, e) => (Math.sqrt(3) * (2 * r ** 2 - 1 - e ** 2)) / (1 - e ** 2)],
    [6, (r, p, e) => (Math.sqrt(6) * r ** 2 * Math.cos(2 * p)) / Math.sqrt(1 + e ** 2 + e ** 4)],
    [
      8,
      (r, p, e) =>
        (Math.sqrt(8) * (3 * (1 + e ** 2) * r ** 3 - 2 * (1 + e ** 2 + e ** 4) * r) * Math.cos(p)) /
        ((1 - e ** 2) * Math.sqrt((1 + e ** 2) * (1 + 4 * e ** 2 + e ** 4))),
    ],
    [
      11,
      (r, _p, e) =>
        (Math.sqrt(5) * (6 * r ** 4 - 6 * (1 + e ** 2) * r ** 2 + 1 + 4 * e ** 2 + e ** 4)) / (1 - e ** 2) ** 2,
    ],
  ];

  test.each([0.2, 0.45].flatMap((e) => forms.map(([noll, form]) => [noll, e, form] as const)))(
    'F%i is Mahajan’s polynomial for ε = %d',
    (noll, e, form) => {
      // five Gauss–Lobatto nodes a panel leave this much of products of order 8
      const QUADRATURE = 1e-9;
      const face = createFace(shapeOf({ rimRadius: 2, holeRadius: 2 * e }), 8000);
      const one = new Float64Array(45);
      one[noll - 1] = 1;
      const field = addTermsInto(new Float64Array(face.points.count), apertureBasis(face, 8), one);
      const { position } = face.points;
      for (let i = 0; i < field.length; i += 41) {
        const [x, y] = [position[3 * i]! / 2, position[3 * i + 1]! / 2];
        expect(Math.abs(field[i]! - form(Math.hypot(x, y), Math.atan2(y, x), e))).toBeLessThan(QUADRATURE);
      }
    },
  );
});

test('a hexagon’s defocus is that of Mahajan and Dai', () => {
  // V. N. Mahajan, G. Dai, JOSA A 24 (2007) 2994 (from memory): H4 = √(5/43) (−5 + 12ρ²), circle through the corners
  const face = createFace(shapeOf({ rimRadius: 1, cornerAngle: 0 }), 8000);
  const one = new Float64Array(45);
  one[3] = 1;
  const field = addTermsInto(new Float64Array(face.points.count), apertureBasis(face, 8), one);
  const { position } = face.points;
  for (let i = 0; i < field.length; i += 41) {
    const square = position[3 * i]! ** 2 + position[3 * i + 1]! ** 2;
    expect(Math.abs(field[i]! - Math.sqrt(5 / 43) * (12 * square - 5))).toBeLessThan(1e-6);
  }
});
