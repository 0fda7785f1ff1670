/**
 * One small source over a plane, against closed forms.
 *
 * Forms: L. Holland & W. Steckelmacher, Vacuum 2 (1952) 346 (abstract seen); L. Holland, Vacuum Deposition of
 * Thin Films (1956) (from memory of). Table: those forms, checked by quadrature of the total mass.
 */
import { describe, expect, test } from 'vitest';
import type { EmissionLaw } from '../../engine/emission/emissionLaw.ts';
import { computeColumn } from '../../engine/transport/column.ts';
import { createVisibility } from '../../engine/transport/visibility.ts';
import {
  coatOf,
  oneSource,
  plantOf,
  planeReceivers,
  pointSource,
  relativeError,
  sceneOf,
  type DesignPart,
} from '../support/plants.ts';
import { gaussLegendre } from '../support/quadrature.ts';

/** Half a unit of the table's sixth decimal, and of T's seventh, plus a rounding of the number itself. */
const RATIO_DIGIT = 0.5e-6 * (1 + 1e-6);
const CENTRE_DIGIT = 0.5e-7 * (1 + 1e-3) + 0.5e-6 * 0.5; // T is tabled to 6 or 7 decimals; half a unit of the sixth
/** A dozen roundings in each form, and the square root. */
const ROUNDING = 2e-14;
/** The same through the file: charges, lengths and density add a few roundings. */
const PATH_ROUNDING = 1e-13;
/** 64 terms; the fractional power leaves the rule's error at u = π/2, 1e-9. */
const WHOLE_PLANE = 1e-8;

const DISTANCES = [0.25, 0.5, 1, 2] as const;

interface Case {
  readonly name: string;
  readonly law: EmissionLaw;
  readonly emission: DesignPart;
  /** t/t0 at x/h = 0.25, 0.5, 1, 2 */
  readonly ratios: readonly number[];
  readonly centre: number | undefined;
  /** T(x) at h = 1 */
  readonly exact: (x: number) => number;
}

const cosine = (power: number, ratios: readonly number[], centre?: number): Case => ({
  name: `cos^${power}`,
  law: { kind: 'cosine', power },
  emission: { law: 'cosine power', power },
  ratios,
  centre,
  exact: (x) => ((power + 1) / (2 * Math.PI)) * (1 + x * x) ** (-(power + 3) / 2),
});

const CASES: readonly Case[] = [
  {
    name: 'isotropic',
    law: { kind: 'isotropic' },
    emission: { law: 'isotropic' },
    ratios: [0.913075, 0.715542, 0.353553, 0.089443],
    centre: 0.0795775,
    exact: (x) => (1 + x * x) ** -1.5 / (4 * Math.PI),
  },
  cosine(1, [0.885813, 0.64, 0.25, 0.04], 0.31831),
  cosine(2, [0.859365, 0.572433, 0.176777, 0.017889], 0.477465),
  cosine(3, [0.833706, 0.512, 0.125, 0.008], 0.63662),
  cosine(4, [0.808814, 0.457947, 0.088388, 0.003578]),
  cosine(1.37, []), // no table: the closed form alone
  cosine(0, []),
  cosine(40, []), // beyond the powers that are multiplied out
];

describe.each(CASES)('a small $name source over a plane', ({ law, emission, ratios, centre, exact }) => {
  const points = planeReceivers([[0, 0], ...DISTANCES.map((x) => [x, 0] as const), [-1.2, 1.6], [0.6, -0.8]]);
  const { deposit } = computeColumn(pointSource(law, [0, 0, 1]), points, createVisibility(sceneOf()));

  test('gives the tabled ratios and the tabled centre', () => {
    ratios.forEach((ratio, i) =>
      expect(Math.abs(deposit[i + 1]! / deposit[0]! - ratio)).toBeLessThanOrEqual(RATIO_DIGIT),
    );
    if (centre !== undefined) expect(Math.abs(deposit[0]! - centre)).toBeLessThanOrEqual(CENTRE_DIGIT);
  });

  test('follows the closed form', () => {
    for (let i = 0; i < points.count; i++) {
      const x = Math.hypot(points.position[3 * i]!, points.position[3 * i + 1]!);
      expect(relativeError(deposit[i]!, exact(x))).toBeLessThan(ROUNDING);
    }
  });

  test('coats a flat plate by the closed form, from the design file to the thickness', async () => {
    const height = 0.8;
    const plant = plantOf({
      mirror: { radiusOfCurvature: 'flat', outerDiameter: '3.2 m' },
      tank: { diameter: '4 m', depth: '2 m' },
      ...oneSource([0, 0, height], emission),
      film: { density: '2500 kg/m3' },
    });
    const coat = await coatOf(plant, { points: 2000, rays: 16 });
    const { position, count } = coat.face.points;
    expect(count).toBeGreaterThan(1000);
    for (let i = 0; i < count; i++) {
      const x = Math.hypot(position[3 * i]!, position[3 * i + 1]!) / height;
      expect(relativeError(coat.thickness[i]!, exact(x) / (2500 * height ** 2))).toBeLessThan(PATH_ROUNDING);
    }
  });
});

test('a tilted cosine source coats a plane by both of its cosines', () => {
  // t = m cosθ cosβ/(π ρ r²), Holland & Steckelmacher (1952)
  const tilt = 0.4;
  const axis = [Math.sin(tilt), 0, -Math.cos(tilt)] as const;
  const points = planeReceivers(Array.from({ length: 21 }, (_, i) => [(i - 10) / 4, 0.3]));
  const { deposit } = computeColumn(
    pointSource({ kind: 'cosine', power: 1 }, [0, 0, 1], axis),
    points,
    createVisibility(sceneOf()),
  );
  for (let i = 0; i < points.count; i++) {
    const x = points.position[3 * i]!;
    const r2 = x * x + 0.09 + 1;
    const cosEmit = (x * axis[0] - axis[2]) / Math.sqrt(r2);
    const expected = Math.max(0, cosEmit) / Math.sqrt(r2) / (Math.PI * r2);
    expect(Math.abs(deposit[i]! - expected)).toBeLessThan(ROUNDING);
  }
});

test('an infinite plane catches all of a cosine-power source and half of an isotropic one', () => {
  // ∫ T 2πx dx over x = tan u: the integrand is a short trigonometric polynomial for whole powers
  const { nodes, weights } = gaussLegendre(64, 0, Math.PI / 2);
  const points = planeReceivers(nodes.map((u) => [Math.tan(u), 0]));
  for (const { law } of CASES) {
    const { deposit } = computeColumn(pointSource(law, [0, 0, 1]), points, createVisibility(sceneOf()));
    const caught = nodes.reduce(
      (sum, u, i) => sum + (weights[i]! * deposit[i]! * 2 * Math.PI * Math.tan(u)) / Math.cos(u) ** 2,
      0,
    );
    expect(Math.abs(caught - (law.kind === 'isotropic' ? 0.5 : 1))).toBeLessThan(WHOLE_PLANE);
  }
});
