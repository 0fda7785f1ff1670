import { describe, expect, test } from 'vitest';
import { evaporatedMasses } from '../../../engine/plant/plant.ts';
import { oneFilament, sampleFilaments, samplePlant } from './samplePlant.ts';

const position = ['0 m', '0.7 m', '1 m'];
const CLIPS = { loops: 4, length: '60 mm', charge: undefined, clipMass: '100 mg', clipsPerLoop: [1, 2, 0, 2] };

/** kg; one sum of a few decimal fractions */
const ROUNDING_KG = 1e-18;

describe('the charge of a filament', () => {
  const set = { arrangement: 'list', filaments: [{ position }] };
  const exception = { exceptions: [{ filament: 1, charge: '5 g' }] };
  const listed = { filaments: [{ position, charge: '4 g' }] };

  test.each([
    ['its exception', { ...set, ...listed, charge: '3 g', ...exception }, { ...CLIPS, charge: '2 g' }, 5e-3],
    ['then its own in the list', { ...set, ...listed, charge: '3 g' }, { ...CLIPS, charge: '2 g' }, 4e-3],
    ['then that of its set', { ...set, charge: '3 g' }, { ...CLIPS, charge: '2 g' }, 3e-3],
    ['then that of its type', set, { ...CLIPS, charge: '2 g' }, 2e-3],
    ['then the clips, counted loop by loop', set, CLIPS, 5e-4],
    ['then the clips, the same on every loop', set, { ...CLIPS, clipsPerLoop: 3 }, 12e-4],
  ])('is %s', (_name, given, type, expected) => {
    const [filament] = sampleFilaments(given, type);
    expect(Math.abs((filament?.charge ?? NaN) - expected)).toBeLessThan(ROUNDING_KG);
  });

  test('of zero is a charge, not a missing one', () => {
    expect(sampleFilaments({ ...set, charge: '0 g' }, CLIPS)[0]?.charge).toBe(0);
    expect(sampleFilaments({ ...set, filaments: [{ position, charge: '0 mg' }] }, CLIPS)[0]?.charge).toBe(0);
  });

  test('is kept, and evaporates nothing, while the filament is out of use', () => {
    const ring = { arrangement: 'ring', count: 3, diameter: '2 m', height: '1 m', charge: '2 g' };
    const plant = samplePlant({ ...ring, exceptions: [{ filament: 2, outOfUse: true, charge: '3 g' }] });
    expect(plant.filaments.map(({ charge }) => charge)).toEqual([2e-3, 3e-3, 2e-3]);
    expect([...evaporatedMasses(plant)]).toEqual([2e-3, 0, 2e-3]);
  });
});

describe('the shares of the loops', () => {
  test('follow the clips on them', () => {
    expect([...oneFilament([0, 0.7, 1], CLIPS).source.weight]).toEqual([0.2, 0.4, 0, 0.4]);
  });

  test('follow the clips also when the charge is given as a mass', () => {
    const { source, charge } = oneFilament([0, 0.7, 1], CLIPS, { charge: '7 g' });
    expect([...source.weight]).toEqual([0.2, 0.4, 0, 0.4]);
    expect(charge).toBeCloseTo(7e-3, 15);
  });

  test('are even for one number of clips', () => {
    expect([...oneFilament([0, 0.7, 1], { ...CLIPS, clipsPerLoop: 7 }).source.weight]).toEqual([
      0.25, 0.25, 0.25, 0.25,
    ]);
  });

  test('are even, and finite, if no loop has a clip', () => {
    const { source, charge } = oneFilament([0, 0.7, 1], { ...CLIPS, clipsPerLoop: [0, 0, 0, 0] });
    expect([...source.weight]).toEqual([0.25, 0.25, 0.25, 0.25]);
    expect(charge).toBe(0);
  });
});
