import { describe, expect, test } from 'vitest';
import { createFace } from '../../../engine/geometry/face.ts';
import { computeColumn, computeHidden } from '../../../engine/transport/column.ts';
import { createPlainKernel } from '../../../engine/transport/depositKernel.ts';
import { buildScene } from '../../../engine/transport/buildScene.ts';
import { sceneDataOf } from '../../../engine/transport/plantRequests.ts';
import { createVisibility } from '../../../engine/transport/visibility.ts';
import { presets } from '../../../presets/index.ts';
import { plantOf } from '../../support/plants.ts';

/** A sum and a difference of two dozen loops: worst of the presets 3e-16 of the largest value. */
const ROUNDING = 1e-14;

describe.each(presets.map(({ id, file }) => [id, file] as const))('of %s', (_, file) => {
  test('what is hidden and what arrives make up what would arrive without obstacles', async () => {
    const plant = plantOf(file);
    const { points } = createFace(plant.shape, 1500);
    const scene = await buildScene(sceneDataOf(plant));
    const [there, empty] = [scene, { ...scene, solids: { ...scene.solids, count: 0 }, meshes: [] }].map((one) =>
      createVisibility(one),
    );
    const { source } = plant.filaments[0]!;
    const open = { ...source, shield: null };
    const arriving = computeColumn(open, points, there!);
    const hidden = computeHidden(open, points, there!, createPlainKernel());
    const glassOnly = computeHidden(open, points, empty!, createPlainKernel());
    const whole = computeColumn(open, points, empty!);
    const most = Math.max(...whole.deposit);
    for (let i = 0; i < points.count; i++) {
      const lost = (hidden.deposit[i] ?? 0) - (glassOnly.deposit[i] ?? 0);
      expect(Math.abs(arriving.deposit[i]! + lost - whole.deposit[i]!)).toBeLessThanOrEqual(ROUNDING * most);
      expect(hidden.signature?.[i] ?? 0).toBe(arriving.signature?.[i] ?? 0);
    }
  });
});
