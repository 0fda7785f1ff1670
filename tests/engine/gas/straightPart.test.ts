import { expect, test } from 'vitest';
import { createEvaluator } from '../../../engine/coat/evaluateCoat.ts';
import { oneSource, plantOf } from '../../support/plants.ts';

/** exp and division, twice. */
const ROUNDING = 1e-12;

test('what arrives straight from one source is the coat in vacuum times e^(−r/λ), at every point', async () => {
  const plant = plantOf({
    mirror: { radiusOfCurvature: '4 m', outerDiameter: '1 m' },
    tank: { diameter: '1.6 m', depth: '1.5 m' },
    ...oneSource([0.1, 0, 0.8], { law: 'isotropic' }),
  });
  const { evaluate } = createEvaluator();
  const perFreePath = 1.2;
  const vacuum = await evaluate(plant, { points: 500, rays: 0 });
  const straight = await evaluate(plant, { points: 500, rays: 0, perFreePath });
  const { position: p } = straight.face.points;
  const s = plant.filaments[0]!.source.position;
  for (let i = 0; i < straight.face.points.count; i++) {
    const r = Math.hypot(p[3 * i]! - s[0]!, p[3 * i + 1]! - s[1]!, p[3 * i + 2]! - s[2]!);
    expect(Math.abs(straight.thickness[i]! / (vacuum.thickness[i]! * Math.exp(-r * perFreePath)) - 1)).toBeLessThan(
      ROUNDING,
    );
  }
});
