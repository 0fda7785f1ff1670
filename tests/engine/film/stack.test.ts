/** Light on layers: limits, conservation, reciprocity, closed forms, and an independent sum of reflections. */
import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import {
  createSolution,
  createStack,
  PHASE_S,
  RP,
  RS,
  solveStackInto,
  TP,
  TS,
  type Stack,
} from '../../../engine/film/stack.ts';
import { gaussLegendre } from '../../support/quadrature.ts';
import { airy, complex, type Medium } from './airy.ts';

/** A few operations on numbers near 1. */
const ROUNDING = 1e-13;
/** Worst of 1e5 random stacks against the sum of reflections: 2.7e-14; the search below looks for worse ones. */
const SUMMED = 1e-12;
const WAVELENGTH = 550e-9;
const ALUMINIUM = { n: 1.0152, k: 6.6273 };

type Layer = readonly [n: number, k: number, thickness: number];

function stackOf(layers: readonly Layer[], ambient = 1): Stack {
  const stack = createStack(layers.length - 1);
  stack.ambient = ambient;
  layers.forEach(([n, k, thickness], j) => {
    stack.n[j] = n;
    stack.k[j] = k;
    stack.thickness[j] = thickness;
  });
  return stack;
}

const solve = (layers: readonly Layer[], angle = 0, ambient = 1, wavelength = WAVELENGTH): Float64Array =>
  solveStackInto(createSolution(), stackOf(layers, ambient), wavelength, Math.sin(angle));

describe('without layers', () => {
  test('a glass reflects ((n − 1)/(n + 1))² head-on', () => {
    const out = solve([[1.5, 0, 0]]);
    expect(Math.abs(out[RS]! - 0.04)).toBeLessThan(ROUNDING);
    expect(Math.abs(out[TS]! - 0.96)).toBeLessThan(ROUNDING);
    expect(out[RP]).toBe(out[RS]);
  });

  test('a metal reflects ((n − 1)² + k²)/((n + 1)² + k²) head-on', () => {
    const { n, k } = ALUMINIUM;
    expect(Math.abs(solve([[n, k, 0]])[RS]! - ((n - 1) ** 2 + k ** 2) / ((n + 1) ** 2 + k ** 2))).toBeLessThan(
      ROUNDING,
    );
  });

  test.each([10, 40, 70, 89])("Fresnel's sine and tangent laws hold at %i°", (degrees) => {
    const angle = (degrees * Math.PI) / 180;
    const inside = Math.asin(Math.sin(angle) / 1.5);
    const out = solve([[1.5, 0, 0]], angle);
    expect(Math.abs(out[RS]! - (Math.sin(angle - inside) / Math.sin(angle + inside)) ** 2)).toBeLessThan(ROUNDING);
    expect(Math.abs(out[RP]! - (Math.tan(angle - inside) / Math.tan(angle + inside)) ** 2)).toBeLessThan(ROUNDING);
  });

  test("at Brewster's angle nothing of p is reflected", () => {
    expect(solve([[1.5, 0, 0]], Math.atan(1.5))[RP]!).toBeLessThan(ROUNDING);
  });

  test('beyond the critical angle a dense medium reflects all', () => {
    const out = solve([[1, 0, 0]], 1, 1.5);
    for (const slot of [RS, RP]) expect(Math.abs(out[slot]! - 1)).toBeLessThan(ROUNDING);
    for (const slot of [TS, TP]) expect(Math.abs(out[slot]!)).toBeLessThan(ROUNDING);
  });

  test('toward grazing everything is reflected', () => {
    const out = solve([[1.5, 0, 0]], Math.PI / 2 - 1e-6);
    expect(out[RS]!).toBeGreaterThan(0.99999);
    expect(out[RP]!).toBeGreaterThan(0.99999);
  });
});

describe('closed forms', () => {
  test('a quarter wave on glass reflects ((n₀nₛ − n²)/(n₀nₛ + n²))²', () => {
    for (const n of [1.38, 1.7, 2.3]) {
      const expected = ((1.52 - n * n) / (1.52 + n * n)) ** 2;
      expect(
        Math.abs(
          solve([
            [n, 0, WAVELENGTH / (4 * n)],
            [1.52, 0, 0],
          ])[RS]! - expected,
        ),
      ).toBeLessThan(ROUNDING);
    }
  });

  test('a quarter wave of √nₛ reflects nothing', () => {
    const n = Math.sqrt(1.52);
    expect(
      solve([
        [n, 0, WAVELENGTH / (4 * n)],
        [1.52, 0, 0],
      ])[RS]!,
    ).toBeLessThan(ROUNDING);
  });

  test('a half wave is absent', () => {
    const bare = solve([[1.52, 0, 0]])[RS]!;
    expect(
      Math.abs(
        solve([
          [2.3, 0, WAVELENGTH / 4.6],
          [1.52, 0, 0],
        ])[RS]! - bare,
      ),
    ).toBeLessThan(ROUNDING);
  });

  test('pairs of quarter waves reflect as one layer of admittance (high/low)²ᵖ·nₛ', () => {
    const [high, low, glass] = [2.3, 1.38, 1.52];
    const pair: Layer[] = [
      [high, 0, WAVELENGTH / (4 * high)],
      [low, 0, WAVELENGTH / (4 * low)],
    ];
    for (const pairs of [1, 3, 6]) {
      const admittance = (high / low) ** (2 * pairs) * glass;
      const out = solve([...Array.from({ length: pairs }, () => pair).flat(), [glass, 0, 0]]);
      expect(Math.abs(out[RS]! - ((1 - admittance) / (1 + admittance)) ** 2)).toBeLessThan(ROUNDING);
    }
  });

  test('a thick metal reflects as its bulk, at any angle, and lets nothing through', () => {
    const { n, k } = ALUMINIUM;
    for (const thickness of [1e-6, 1e-3, 1])
      for (const angle of [0, 0.7, 1.4]) {
        const film = solve(
          [
            [n, k, thickness],
            [1.46, 0, 0],
          ],
          angle,
        );
        const bulk = solve([[n, k, 0]], angle);
        for (const slot of [RS, RP]) expect(Math.abs(film[slot]! - bulk[slot]!)).toBeLessThan(ROUNDING);
        for (const slot of [TS, TP]) expect(film[slot]!).toBeLessThan(ROUNDING);
      }
  });

  test('a layer in two parts is the layer whole', () => {
    const whole = solve(
      [
        [ALUMINIUM.n, ALUMINIUM.k, 20e-9],
        [1.46, 0, 0],
      ],
      0.5,
    );
    const parts = solve(
      [
        [ALUMINIUM.n, ALUMINIUM.k, 7e-9],
        [ALUMINIUM.n, ALUMINIUM.k, 0],
        [ALUMINIUM.n, ALUMINIUM.k, 13e-9],
        [1.46, 0, 0],
      ],
      0.5,
    );
    for (let i = 0; i < 6; i++) expect(Math.abs(parts[i]! - whole[i]!)).toBeLessThan(ROUNDING);
  });
});

const layer = fc.tuple(
  fc.double({ min: 0.1, max: 4, noNaN: true }),
  fc.oneof(fc.constant(0), fc.double({ min: 0, max: 12, noNaN: true })),
  fc.double({ min: 0, max: 400e-9, noNaN: true }),
);
const layers = fc.array(layer, { minLength: 1, maxLength: 6 });
const angle = fc.double({ min: 0, max: 1.5, noNaN: true });
const wavelength = fc.double({ min: 0.2e-6, max: 2.5e-6, noNaN: true });
const SEED = { seed: 20, numRuns: 400 };

describe('any stack', () => {
  test('absorbs what it neither reflects nor transmits, and never less than nothing', () => {
    fc.assert(
      fc.property(layers, angle, wavelength, (stack, at, lambda) => {
        const out = solve(stack, at, 1, lambda);
        for (const [r, t] of [
          [out[RS]!, out[TS]!],
          [out[RP]!, out[TP]!],
        ] as const) {
          expect(r).toBeGreaterThanOrEqual(0);
          expect(t).toBeGreaterThanOrEqual(0);
          expect(1 - r - t).toBeGreaterThan(-SUMMED);
        }
      }),
      SEED,
    );
  });

  test('conserves energy where nothing absorbs', () => {
    const clear = fc.array(
      fc.tuple(
        fc.double({ min: 1.3, max: 4, noNaN: true }),
        fc.constant(0),
        fc.double({ min: 0, max: 400e-9, noNaN: true }),
      ),
      { minLength: 1, maxLength: 6 },
    );
    fc.assert(
      fc.property(clear, angle, wavelength, (stack, at, lambda) => {
        const out = solve(stack, at, 1, lambda);
        expect(Math.abs(out[RS]! + out[TS]! - 1)).toBeLessThan(SUMMED);
        expect(Math.abs(out[RP]! + out[TP]! - 1)).toBeLessThan(SUMMED);
      }),
      SEED,
    );
  });

  test('agrees with the sum of reflections, phase included', () => {
    fc.assert(
      fc.property(layers, angle, wavelength, (stack, at, lambda) => {
        const out = solve(stack, at, 1, lambda);
        const media: Medium[] = [
          { index: complex(1) },
          ...stack.map(([n, k, thickness]) => ({ index: complex(n, k), thickness })),
        ];
        const s = airy(media, lambda, at, 's');
        const p = airy(media, lambda, at, 'p');
        expect(Math.abs(out[RS]! - s.reflected)).toBeLessThan(SUMMED);
        expect(Math.abs(out[RP]! - p.reflected)).toBeLessThan(SUMMED);
        expect(Math.abs(out[TS]! - s.transmitted)).toBeLessThan(SUMMED);
        expect(Math.abs(out[TP]! - p.transmitted)).toBeLessThan(SUMMED);
        const turned = out[PHASE_S]! - Math.atan2(s.r.im, s.r.re);
        expect(Math.abs(Math.sin(turned / 2)) * Math.sqrt(s.reflected)).toBeLessThan(SUMMED);
      }),
      SEED,
    );
  });

  test('lets as much light through from either side', () => {
    fc.assert(
      fc.property(layers, angle, wavelength, (stack, at, lambda) => {
        const glass = 1.52;
        const down = solve([...stack, [glass, 0, 0]], at, 1, lambda);
        const up = solve([...stack.toReversed(), [1, 0, 0]], Math.asin(Math.sin(at) / glass), glass, lambda);
        expect(Math.abs(down[TS]! - up[TS]!)).toBeLessThan(SUMMED);
        expect(Math.abs(down[TP]! - up[TP]!)).toBeLessThan(SUMMED);
      }),
      SEED,
    );
  });
});

test('what a film absorbs is the field in it times its loss', () => {
  // A = (2π/λ) ∫ 2nk |E|² dz over the film, E in units of the incident field, at normal incidence in air
  const { n, k } = ALUMINIUM;
  const thickness = 15e-9;
  const film: Layer = [n, k, thickness];
  const glass: Layer = [1.46, 0, 0];
  const out = solve([film, glass]);
  // At depth z the rest of the film, lit from air with a field of 1, has the field 1 + r at its face and sends
  // T into the glass; the flux into the glass is the same wherever it is reckoned from, so |E|² = T_film |1 + r|² / T.
  const { nodes, weights } = gaussLegendre(24, 0, thickness);
  const absorbed = nodes.reduce((sum, z, i) => {
    const rest = solve([[n, k, thickness - z], glass]);
    const r = Math.sqrt(rest[RS]!);
    const face = 1 + 2 * r * Math.cos(rest[PHASE_S]!) + r * r;
    const field = (out[TS]! * face) / rest[TS]!;
    return sum + weights[i]! * ((2 * Math.PI) / WAVELENGTH) * 2 * n * k * field;
  }, 0);
  expect(Math.abs(absorbed - (1 - out[RS]! - out[TS]!))).toBeLessThan(1e-12);
});
