/**
 * Spherical receivers: inside a sphere, and concave spherical mirrors.
 *
 * Closed forms after L. Holland & W. Steckelmacher, Vacuum 2 (1952) 346 and L. Holland, Vacuum Deposition of Thin
 * Films (1956) (from memory of), evaluated and checked by an independent vector sum.
 */
import { expect, test } from 'vitest';
import type { EmissionLaw } from '../../engine/emission/emissionLaw.ts';
import { computeColumn } from '../../engine/transport/column.ts';
import { createVisibility } from '../../engine/transport/visibility.ts';
import {
  coatOf,
  kilograms,
  metres,
  oneSource,
  plantOf,
  pointSource,
  receivers,
  relativeError,
  sceneOf,
  type DesignPart,
  type Vector,
} from '../support/plants.ts';

/** A dozen roundings, and the cancellation of points given by their angle. */
const ROUNDING = 1e-13;
const ISOTROPIC: EmissionLaw = { kind: 'isotropic' };
const COSINE: EmissionLaw = { kind: 'cosine', power: 1 };

/** Points at polar angles γ from +z on the inside of a sphere about the origin. */
function insideSphere(radius: number, angles: readonly number[]) {
  return receivers(
    angles.map((gamma, k) => {
      const [sin, cos] = [Math.sin(gamma), Math.cos(gamma)];
      const out: Vector = [sin * Math.cos(k), sin * Math.sin(k), cos];
      return { point: [radius * out[0], radius * out[1], radius * out[2]], normal: [-out[0], -out[1], -out[2]] };
    }),
  );
}

const depositOn = (law: EmissionLaw, position: Vector, axis: Vector, points: ReturnType<typeof insideSphere>) =>
  computeColumn(pointSource(law, position, axis), points, createVisibility(sceneOf())).deposit;

const ANGLES = [0, 0.3, 1, 1.5, 2.2, 3];

test('a cosine source on a sphere coats its inside evenly', () => {
  const radius = 1.7;
  const deposit = depositOn(COSINE, [0, 0, -radius], [0, 0, 1], insideSphere(radius, ANGLES));
  for (const t of deposit) expect(relativeError(t, 1 / (4 * Math.PI * radius ** 2))).toBeLessThan(1e-12); // near the source r² cancels
});

test('an isotropic source at the centre of a sphere coats it evenly', () => {
  const radius = 1.7;
  const deposit = depositOn(ISOTROPIC, [0, 0, 0], [0, 0, 1], insideSphere(radius, ANGLES));
  for (const t of deposit) expect(relativeError(t, 1 / (4 * Math.PI * radius ** 2))).toBeLessThan(ROUNDING);
});

test('a cosine source at the centre of a sphere coats it as 4 cosγ', () => {
  const deposit = depositOn(COSINE, [0, 0, 0], [0, 0, 1], insideSphere(1, [0, Math.PI / 4, Math.PI / 3, 2]));
  [4, 2.828427, 2, 0].forEach((value, i) => {
    expect(Math.abs(deposit[i]! * 4 * Math.PI - value)).toBeLessThanOrEqual(0.5e-6);
  });
});

test('an isotropic source off the centre of a sphere coats it by the closed form', () => {
  // (a − e cosγ)/(a² + e² − 2ae cosγ)^1.5 with a = 1, γ = 0, 90, 180°
  for (const [e, values] of [
    [0.3, [2.040816, 0.87874, 0.591716]],
    [0.5, [4, 0.715542, 0.444444]],
    [0.9, [100, 0.41066, 0.277008]],
  ] as const) {
    const deposit = depositOn(ISOTROPIC, [0, 0, e], [0, 0, 1], insideSphere(1, [0, Math.PI / 2, Math.PI]));
    values.forEach((value, i) =>
      expect(Math.abs(deposit[i]! * 4 * Math.PI - value)).toBeLessThanOrEqual(0.5e-6 * (1 + 1e-6)),
    );
  }
});

/** Coat of a concave spherical mirror under one source on its axis. */
async function mirrorCoat(curvature: number, height: number, diameter: number, emission: DesignPart) {
  return coatOf(
    plantOf({
      mirror: { radiusOfCurvature: metres(curvature), conicConstant: 0, outerDiameter: metres(diameter) },
      tank: { diameter: metres(diameter + 1), depth: metres(2 * height + 2), behindMirror: '0.9 m' },
      ...oneSource([0, 0, height], emission),
    }),
    { points: 4000, rays: 2 ** 14 },
  );
}

/** Thickness at a radius, from the nodes of the map's profile; the radius must be one of them. */
function profileAt({ profile }: Awaited<ReturnType<typeof mirrorCoat>>, radius: number): number {
  const i = profile.radius.findIndex((r) => Math.abs(r - radius) < 1e-9);
  if (i < 0) throw new Error(`no node at radius ${radius}`);
  return profile.mean[i]!;
}

/** Deposit at radius ρ over that at the vertex of a concave mirror, from points on its surface. */
function mirrorRatio(law: EmissionLaw, curvature: number, height: number, rho: number): number {
  const root = Math.sqrt(curvature ** 2 - rho ** 2);
  const points = receivers([
    { point: [0, 0, 0], normal: [0, 0, 1] },
    { point: [rho, 0, curvature - root], normal: [-rho / curvature, 0, root / curvature] },
  ]);
  const [centre, off] = depositOn(law, [0, 0, height], [0, 0, -1], points);
  return off! / centre!;
}

test('concave mirrors give the tabled ratios', () => {
  for (const [curvature, height, isotropic, cosine] of [
    [10, 2, [0.934037, 0.775491, 0.597065], [0.905813, 0.690036, 0.467374]],
    [10, 3, [0.974344, 0.903937, 0.804837], [0.960978, 0.856084, 0.714183]],
    [16, 16, [1, 1, 1], [0.999512, 0.998045, 0.995596]],
  ] as const) {
    [0.5, 1, 1.5].forEach((rho, i) => {
      expect(Math.abs(mirrorRatio(ISOTROPIC, curvature, height, rho) - isotropic[i]!)).toBeLessThanOrEqual(
        0.5e-6 * (1 + 1e-6),
      );
      expect(Math.abs(mirrorRatio(COSINE, curvature, height, rho) - cosine[i]!)).toBeLessThanOrEqual(
        0.5e-6 * (1 + 1e-6),
      );
    });
  }
});

test('the same ratio comes out of the whole path, at the rim of the map', async () => {
  const coat = await mirrorCoat(10, 2, 3, { law: 'cosine power' });
  expect(Math.abs(profileAt(coat, 1.5) / profileAt(coat, 0) - 0.467374)).toBeLessThanOrEqual(0.5e-6 * (1 + 1e-6));
});

test('isotropic at the centre of curvature, or cosine at twice that height, coats a concave mirror evenly', async () => {
  for (const [height, emission, areal] of [
    [10, { law: 'isotropic' }, 1 / (4 * Math.PI * 100)],
    [20, { law: 'cosine power' }, 1 / (4 * Math.PI * 100)],
  ] as const) {
    const coat = await mirrorCoat(10, height, 3, emission);
    for (const t of coat.thickness) expect(relativeError(t, areal / 2700)).toBeLessThan(ROUNDING);
    expect(coat.statistics.uniformity.value).toBeLessThan(ROUNDING);
    expect(coat.statistics.rms.value).toBeLessThan(ROUNDING);
    expect(relativeError(coat.statistics.edgeRatio.value, 1)).toBeLessThan(ROUNDING);
    expect(coat.statistics.fractionInside.value).toBe(1);
  }
});

test('a concave mirror collects the solid angle of its rim', async () => {
  // Rc = 10, h = 2, rim 1.5: isotropic ½[1 − (h−s)/√(a²+(h−s)²)], cosine a²/(a²+(h−s)²); equal to the surface integral
  const SAG = 10 - Math.sqrt(100 - 1.5 ** 2);
  const FRACTION_DIGIT = 0.5e-8;
  for (const [emission, tabled, exact] of [
    [{ law: 'isotropic' }, 0.10860739, (1 - (2 - SAG) / Math.hypot(1.5, 2 - SAG)) / 2],
    [{ law: 'cosine power' }, 0.38724731, 1.5 ** 2 / (1.5 ** 2 + (2 - SAG) ** 2)],
  ] as const) {
    const { statistics, budget } = await mirrorCoat(10, 2, 3, emission);
    expect(Math.abs(exact - tabled)).toBeLessThanOrEqual(FRACTION_DIGIT * (1 + 1e-6));
    expect(Math.abs(statistics.collection.value - exact)).toBeLessThan(statistics.collection.error);
    expect(Math.abs(statistics.collection.value - exact)).toBeLessThan(1e-8); // order 8 at 4000 points
    expect(Math.abs(budget.closure!.value)).toBeLessThan(budget.closure!.error);
  }
});

test('a ring over a concave mirror gives the tabled deposits', async () => {
  // R = 1.2 at h = 1.5 over Rc = 6, ρ = 0, .3, .6, .9, 1.2; 64 sources: e^(−64·acosh 1.67) is below 1e-30
  const rhos = [0, 0.3, 0.6, 0.9, 1.2];
  for (const [emission, tabled] of [
    [{ law: 'isotropic' }, [0.01683999, 0.0169388, 0.01717583, 0.01736237, 0.01718563]],
    [{ law: 'cosine power' }, [0.05259929, 0.05317565, 0.05456486, 0.05565989, 0.05460422]],
  ] as const) {
    const plant = plantOf({
      mirror: { radiusOfCurvature: '6 m', conicConstant: 0, outerDiameter: '2.6 m' },
      tank: { diameter: '3.4 m', depth: '3 m' },
      filamentTypes: { small: { emission } },
      filaments: [
        {
          arrangement: 'ring',
          name: 'ring',
          type: 'small',
          count: 64,
          diameter: '2.4 m',
          height: '1.5 m',
          charge: kilograms(1 / 64),
        },
      ],
      witnesses: rhos.map((rho, i) => ({ name: `W${i}`, radius: metres(rho), angle: '0 deg' })),
    });
    const { witnessThickness } = await coatOf(plant, { points: 2000, rays: 16 });
    tabled.forEach((value, i) =>
      expect(Math.abs(witnessThickness[i]! * 2700 - value)).toBeLessThanOrEqual(0.5e-8 * (1 + 1e-6)),
    );
  }
});
