/** Thin aluminium on fused silica: what goes through, against an independent calculation. */
import { describe, expect, test } from 'vitest';
import { lineLight } from '../../engine/film/light.ts';
import { filmOptics, type MirrorFilm } from '../../engine/film/mirrorFilm.ts';
import { ALUMINIUM } from '../../engine/film/materials/aluminium.ts';
import { ALUMINIUM_OXIDE } from '../../engine/film/materials/aluminiumOxide.ts';
import { indexAt } from '../../engine/film/materials/indexTable.ts';
import { SUBSTRATE_MATERIALS } from '../../engine/film/materials/materials.ts';
import { opaqueThickness } from '../../engine/film/opacity.ts';
import { litFilm } from '../../engine/film/reflectanceCurve.ts';
import { airy, complex } from '../engine/film/airy.ts';

/** A unit of the table's last digit: five decimals of R, three to four figures of T. */
const REFLECTED = 1e-5;
const TRANSMITTED = 1e-3;
/** The two smallest columns carry two figures. */
const TRANSMITTED_FAINT = 0.05;
const ROUNDING = 1e-12;

const film: MirrorFilm = {
  substrate: SUBSTRATE_MATERIALS['fused silica'],
  metal: ALUMINIUM,
  oxide: ALUMINIUM_OXIDE,
  oxideThickness: 0,
  overcoat: null,
  overcoatThickness: 0,
};

type Shares = readonly [reflected: number, transmitted: number];

/**
 * Reflected and transmitted shares of bare films at normal incidence from the air side, T into the glass:
 * worked out apart from this code by characteristic matrix and by Airy's sum, which agree to six digits;
 * n, k from A. D. Rakić, Appl. Opt. 34 (1995) 4755, glass from I. H. Malitson, JOSA 55 (1965) 1205.
 */
const TABLE: readonly (readonly [nm: number, at400: Shares, at550: Shares, at650: Shares, at800: Shares])[] = [
  [0, [0.03622, 0.9638], [0.03495, 0.965], [0.03454, 0.9655], [0.03414, 0.9659]],
  [5, [0.3861, 0.485], [0.47852, 0.3357], [0.50961, 0.2671], [0.46891, 0.2317]],
  [10, [0.67562, 0.1997], [0.72767, 0.1189], [0.73504, 0.09031], [0.67748, 0.0832]],
  [20, [0.86774, 0.03907], [0.87262, 0.02184], [0.86564, 0.01665], [0.81738, 0.01805]],
  [40, [0.92071, 1.831e-3], [0.91302, 1.024e-3], [0.90348, 8.18e-4], [0.86562, 1.278e-3]],
  [80, [0.92375, 4.2e-6], [0.91537, 2.4e-6], [0.90561, 2.1e-6], [0.86822, 6.8e-6]],
  [100, [0.92376, 2.0e-7], [0.91537, 1.2e-7], [0.90561, 1.1e-7], [0.8682, 4.9e-7]],
];

describe.each(TABLE)('%i nm of aluminium on fused silica', (nm, at400, at550, at650, at800) => {
  const row = [at400, at550, at650, at800];
  test.each([400, 550, 650, 800].map((at, i) => [at, ...row[i]!] as const))(
    'at %i nm reflects %d and lets %d through',
    (at, reflected, transmitted) => {
      const { mean } = filmOptics(film, nm * 1e-9, at * 1e-9);
      expect(Math.abs(mean.reflected - reflected)).toBeLessThan(REFLECTED);
      expect(Math.abs(mean.transmitted / transmitted - 1)).toBeLessThan(nm < 80 ? TRANSMITTED : TRANSMITTED_FAINT);
      expect(mean.absorbed).toBeGreaterThanOrEqual(0);
      expect(Math.abs(mean.reflected + mean.transmitted + mean.absorbed - 1)).toBeLessThan(ROUNDING);
    },
  );
});

test('a film with oxide and overcoat agrees with the sum of reflections at a slant', () => {
  const layered: MirrorFilm = {
    ...film,
    oxideThickness: 4e-9,
    overcoat: SUBSTRATE_MATERIALS['fused silica'],
    overcoatThickness: 120e-9,
  };
  const index = (material: typeof ALUMINIUM) => {
    const { n, k } = indexAt(material, 480e-9);
    return complex(n, k);
  };
  const glass = index(film.substrate);
  const media = [
    { index: complex(1) },
    { index: glass, thickness: 120e-9 },
    { index: index(ALUMINIUM_OXIDE), thickness: 4e-9 },
    { index: index(ALUMINIUM), thickness: 25e-9 },
    { index: glass },
  ];
  for (const angle of [0, 0.5, 1.2]) {
    const optics = filmOptics(layered, 25e-9, 480e-9, angle);
    for (const polarisation of ['s', 'p'] as const) {
      const summed = airy(media, 480e-9, angle, polarisation);
      expect(Math.abs(optics[polarisation].reflected - summed.reflected)).toBeLessThan(ROUNDING);
      expect(Math.abs(optics[polarisation].transmitted - summed.transmitted)).toBeLessThan(ROUNDING);
    }
  }
});

test('100 nm has the optical density 6.94 at 550 nm, and 1/e of the light is left after 6.6 nm', () => {
  // the same independent calculation; depth λ/4πk
  const { transmitted } = filmOptics(film, 100e-9, 550e-9).mean;
  expect(Math.abs(-Math.log10(transmitted) - 6.94)).toBeLessThan(0.005);
  const depth = (nm: number): number => (nm * 1e-9) / (4 * Math.PI * indexAt(ALUMINIUM, nm * 1e-9).k);
  expect(Math.abs(depth(550) - 6.6e-9)).toBeLessThan(0.05e-9);
  expect(Math.abs(depth(800) - 7.62e-9)).toBeLessThan(0.005e-9);
  expect(Math.abs(depth(1000) - 8.38e-9)).toBeLessThan(0.005e-9);
});

test('the coats that observatories lay are opaque: 76 nm is where a lamp vanishes in a lit room, 40 nm is not', () => {
  // targets in use are 76–150 nm (observatory pages: Palomar 3 µin, WHT 100 nm, PRL 150 nm)
  const lit = litFilm(film, lineLight(550e-9));
  const thickness = opaqueThickness(lit, { kind: 'transmitted', limit: 5 / 1.2e5 });
  expect(thickness).toBeGreaterThan(40e-9);
  expect(thickness).toBeLessThan(76.2e-9);
});
