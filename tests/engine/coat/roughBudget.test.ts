import { expect, test } from 'vitest';
import { createEvaluator } from '../../../engine/coat/evaluateCoat.ts';
import { presets } from '../../../presets/index.ts';
import { plantOf } from '../../support/plants.ts';

test('without rays the budget gives the mirror its share, the rest to elsewhere, and claims no closure', async () => {
  const plant = plantOf(presets[0]!.file);
  const evaluator = createEvaluator();
  const rough = (await evaluator.evaluate(plant, { points: 2000, rays: 0 })).budget;
  const full = (await evaluator.evaluate(plant, { points: 2000, rays: 2 ** 14 })).budget;
  expect(rough.closure).toBeNull();
  expect(full.closure).not.toBeNull();
  expect(rough.items[0]).toEqual(full.items[0]);
  expect(rough.items.map(({ name }) => name)).toEqual(['mirror', 'elsewhere']);
  expect(rough.items[0]!.mass.value + rough.items[1]!.mass.value).toBe(full.evaporated);
});
