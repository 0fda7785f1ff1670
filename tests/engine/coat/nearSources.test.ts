import { uniformFloat64 } from 'pure-rand/distribution/uniformFloat64';
import { xoroshiro128plus } from 'pure-rand/generator/xoroshiro128plus';
import { describe, expect, test } from 'vitest';
import { coatOf, oneSource, plantOf, type DesignPart } from '../../support/plants.ts';

/** Share that a disc of radius 1 catches of a source h above (x, 0), by its solid angle: the trapezoid rule over the rim. */
function caught(shareWithin: (reach: number) => number, x: number): number {
  const steps = 4000; // the distance to the rim repeats around: converges exponentially
  let sum = 0;
  for (let k = 0; k < steps; k++) {
    const turn = (2 * Math.PI * k) / steps;
    sum += shareWithin(-x * Math.cos(turn) + Math.sqrt(1 - (x * Math.sin(turn)) ** 2));
  }
  return sum / steps;
}

const LAWS: Readonly<
  Record<
    string,
    { readonly emission: DesignPart; readonly within: (h: number, reach: number) => number; readonly peak: number }
  >
> = {
  isotropic: {
    emission: { law: 'isotropic' },
    within: (h, reach) => (1 - h / Math.hypot(h, reach)) / 2,
    peak: 1 / (4 * Math.PI),
  },
  cosine: {
    emission: { law: 'cosine power' },
    within: (h, reach) => reach ** 2 / (reach ** 2 + h ** 2),
    peak: 1 / Math.PI,
  },
};

/** Rounding that stays when both rules agree. */
const ROUNDING = 1e-12;

describe.each(Object.entries(LAWS))('a source of %s emission close to the mirror', (_, { emission, within, peak }) => {
  // heights in units of the mirror's radius; filaments hang at 0.1 and more
  test.each([0.3, 0.1, 0.05, 0.02, 0.01])(
    'at %d of its radius leaves no error beyond the stated one',
    async (height) => {
      for (const x of [0, 0.357, 0.72]) {
        const plant = plantOf({
          mirror: { radiusOfCurvature: 'flat', outerDiameter: '2 m' },
          tank: { diameter: '4 m', depth: '3 m' },
          ...oneSource([x, 0, height], emission),
          film: { density: '1000 kg/m3' },
        });
        const { statistics, budget } = await coatOf(plant);
        const off = Math.abs(statistics.collection.value - caught((reach) => within(height, reach), x));
        expect(off, `collection at x = ${x}`).toBeLessThanOrEqual(statistics.collection.error + ROUNDING);
        const { maximum } = statistics;
        expect(Math.abs(maximum.value * 1000 - peak / height ** 2), `thickest at x = ${x}`).toBeLessThanOrEqual(
          maximum.error * 1000 + ROUNDING * (peak / height ** 2),
        );
        expect(Math.abs(budget.closure!.value), `closure at x = ${x}`).toBeLessThanOrEqual(budget.closure!.error);
      }
    },
  );
});

test('wherever a source hangs close to the mirror, its stated error covers the true one', async () => {
  const random = xoroshiro128plus(9);
  for (let k = 0; k < 150; k++) {
    // heights from 1 % to 20 % of the radius, evenly in their logarithm; places evenly over the face
    const height = 0.01 * 20 ** uniformFloat64(random);
    const x = 0.95 * Math.sqrt(uniformFloat64(random));
    const { emission, within } = uniformFloat64(random) < 0.5 ? LAWS['isotropic']! : LAWS['cosine']!;
    const plant = plantOf({
      mirror: { radiusOfCurvature: 'flat', outerDiameter: '2 m' },
      tank: { diameter: '4 m', depth: '3 m' },
      ...oneSource([x, 0, height], emission),
    });
    const { collection } = (await coatOf(plant, { rays: 16 })).statistics;
    const off = Math.abs(collection.value - caught((reach) => within(height, reach), x));
    expect(off, `height ${height}, x ${x}`).toBeLessThanOrEqual(collection.error + ROUNDING);
  }
});
