import { describe, expect, test } from 'vitest';
import { createEvaluator } from '../../../engine/coat/evaluateCoat.ts';
import type { Estimate } from '../../../engine/coat/statistics.ts';
import { presets } from '../../../presets/index.ts';
import { benchDesign } from '../../bench/benchDesign.ts';
import { plantOf } from '../../support/plants.ts';

const WANTED = 5e-4;
const POINTS = 3000;
const PLAIN = { points: POINTS, rays: 0 } as const;

const evaluator = createEvaluator();

/** Whether two numbers with errors may be the same one. */
const agree = (a: Estimate, b: Estimate): boolean => Math.abs(a.value - b.value) <= a.error + b.error;

describe.each(presets.map(({ id, file }) => [id, file] as const))('on few points, %s', (_, file) => {
  test('is as thick everywhere as summed directly, within what it states', async () => {
    const plant = plantOf(file);
    const direct = await evaluator.evaluate(plant, PLAIN);
    const few = await evaluator.evaluate(plant, { ...PLAIN, wantedError: WANTED });
    // the points of the grid come first; those of refined cells after them
    let most = 0;
    for (let i = 0; i < few.face.points.count; i++)
      most = Math.max(most, Math.abs(direct.thickness[i]! - few.thickness[i]!));
    expect(most).toBeLessThanOrEqual(WANTED * direct.statistics.mean.value);
    for (const name of ['mean', 'minimum', 'maximum', 'uniformity', 'rms', 'edgeRatio', 'collection'] as const)
      expect(agree(few.statistics[name], direct.statistics[name]), name).toBe(true);
  });
});

test('a moved ring and a changed charge are followed', async () => {
  for (const count of [12, 13]) {
    const plant = plantOf(benchDesign({ count }) as Record<string, unknown>);
    const heavier = {
      ...plant,
      filaments: plant.filaments.map((filament, f) =>
        f === 3 ? { ...filament, charge: 2 * filament.charge } : filament,
      ),
    };
    for (const one of [plant, heavier]) {
      const direct = await evaluator.evaluate(one, PLAIN);
      const few = await evaluator.evaluate(one, { ...PLAIN, wantedError: WANTED });
      expect(agree(few.statistics.mean, direct.statistics.mean)).toBe(true);
      expect(agree(few.statistics.maximum, direct.statistics.maximum)).toBe(true);
      // beyond rounding, or it was summed directly after all
      expect(few.statistics.mean.error).toBeGreaterThan(direct.statistics.mean.error);
    }
  }
});
