/** Leaps over diffusion against the same atoms colliding one by one. */
import { expect, test } from 'vitest';
import { encountersOf } from '../../../engine/gas/collisions.ts';
import { DEFAULT_VAPOUR } from '../../../engine/gas/freePath.ts';
import { pureGas } from '../../../engine/gas/gases.ts';
import { leapsOf } from '../../../engine/gas/leaps.ts';
import { prepareScatter } from '../../../engine/gas/scatterProblem.ts';
import { flyChunks } from '../../../engine/gas/tally.ts';
import { packSolids } from '../../../engine/geometry/solids.ts';
import { pointSource } from '../../support/plants.ts';
import { benchProblem, ROOM, VACUUM } from './gasScenes.ts';

test('leaping and colliding one by one leave the same tallies: χ² over all places', async () => {
  const problem = benchProblem({
    gas: pureGas('N2', 1, ROOM), // free paths of 1 cm
    sources: [pointSource({ kind: 'isotropic' }, [0.4, 0, 0.9])],
    solids: packSolids([{ shape: 'box', name: 'box', center: [-0.4, 0, 0.7], size: [0.3, 0.3, 0.3] }]),
  });
  const CHUNKS = 2;
  const leaping = await flyChunks(await prepareScatter(problem), 0, CHUNKS);
  const colliding = await flyChunks(await prepareScatter({ ...problem, leaps: false, seed: 2 }), 0, CHUNKS);
  expect(leaping.leaps / leaping.atoms).toBeGreaterThan(1);
  expect(colliding.leaps).toBe(0);
  expect(leaping.collisions / colliding.collisions).toBeLessThan(0.8);
  let [chi2, freedom] = [0, -1];
  leaping.scattered.forEach((a, i) => {
    const b = colliding.scattered[i]!;
    if (a + b < 10) return;
    chi2 += (a - b) ** 2 / (a + b);
    freedom++;
  });
  expect(freedom).toBeGreaterThan(20);
  expect(chi2).toBeLessThan(freedom + 3 * Math.sqrt(2 * freedom)); // three standard deviations of χ²
});

test('an atom forgets the faster, the heavier the molecules are; in vacuum and on demand it never leaps', () => {
  const leaps = (name: 'He' | 'N2' | 'Ar') => leapsOf(encountersOf(pureGas(name, 1, ROOM), DEFAULT_VAPOUR), true);
  expect(leaps('He').forgetting).toBeGreaterThan(4 * leaps('N2').forgetting);
  expect(leaps('N2').forgetting).toBeGreaterThan(leaps('Ar').forgetting);
  expect(leapsOf(encountersOf(VACUUM, DEFAULT_VAPOUR), true).wanted).toBe(Infinity);
  expect(leapsOf(encountersOf(pureGas('N2', 1, ROOM), DEFAULT_VAPOUR), false).wanted).toBe(Infinity);
});
