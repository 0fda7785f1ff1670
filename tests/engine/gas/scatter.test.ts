/** The driver: rounds, stops, progress, and results that do not depend on who flies. */
import { describe, expect, test } from 'vitest';
import { CHUNK } from '../../../engine/gas/flight.ts';
import { pureGas } from '../../../engine/gas/gases.ts';
import { logSpaced, readPressureSweep } from '../../../engine/gas/pressureSweep.ts';
import { createLocalRunner, scatter, type ChunkRunner, type ScatterResult } from '../../../engine/gas/scatter.ts';
import { mergeTallies } from '../../../engine/gas/tally.ts';
import { flyTracks } from '../../../engine/gas/tracks.ts';
import { FACE, WALL } from '../../../engine/transport/massRays.ts';
import { benchProblem, ROOM, VACUUM } from './gasScenes.ts';

const ROUNDING = 1e-12;
const hazy = benchProblem({ gas: pureGas('air', 0.02, ROOM) });

/** Workers that each take every n-th chunk and answer late ones first. */
function crew(workers: number): ChunkRunner {
  const runners = Array.from({ length: workers }, createLocalRunner);
  return async (problem, first, count) => {
    const answers = runners.map(async (run, w) => {
      const own = Array.from({ length: count }, (_, i) => first + i).filter((i) => i % workers === w);
      return Promise.all(own.toReversed().map((i) => run(problem, i, 1)));
    });
    return mergeTallies((await Promise.all(answers)).toReversed().flat());
  };
}

describe('scattering to a wanted error', () => {
  test('gives the same to the last bit with 1, 2 and 4 workers', async () => {
    const alone = await scatter(hazy, { wantedError: 0.08 });
    for (const workers of [1, 2, 4])
      expect(await scatter(hazy, { wantedError: 0.08, run: crew(workers) })).toEqual(alone);
  });

  test('stops at the wanted error, not much beyond, and says whether it was reached', async () => {
    const rough = await scatter(hazy, { wantedError: 0.08 });
    expect(rough.isReached).toBe(true);
    expect(rough.summary.cellError).toBeLessThanOrEqual(0.08);
    expect(rough.summary.cellError).toBeGreaterThan(0.04);
    const fine = await scatter(hazy, { wantedError: 0.04 });
    expect(fine.tally.atoms / rough.tally.atoms).toBeGreaterThan(2); // four times, in whole rounds
    const cut = await scatter(hazy, { wantedError: 1e-6, maxAtoms: 20_000 });
    expect(cut.isReached).toBe(false);
    expect(cut.tally.atoms).toBe(Math.ceil(20_000 / CHUNK) * CHUNK);
    const short = await scatter(hazy, { wantedError: 1e-6, maxCollisions: 1e5 });
    expect(short.isReached).toBe(false);
    expect(Math.abs(short.tally.collisions / 1e5 - 1)).toBeLessThan(0.05); // a chunk, and the spread of its collisions
  });

  test('shows progress that never goes back and ends at 1; a step that throws ends it', async () => {
    const shares: number[] = [];
    await scatter(hazy, { wantedError: 0.06, control: { step: (share) => void shares.push(share) } });
    expect(shares.length).toBeGreaterThan(16);
    shares.forEach((share, i) => expect(share).toBeGreaterThanOrEqual(shares[i - 1] ?? 0));
    expect(shares.at(-1)).toBe(1);
    let steps = 0;
    const stop = {
      step: () => {
        if (++steps === 5) throw new Error('cancelled');
      },
    };
    await expect(scatter(hazy, { control: stop })).rejects.toThrow('cancelled');
    expect(steps).toBe(5);
  });

  test('refuses an error of nothing and no atoms', async () => {
    await expect(scatter(hazy, { wantedError: 0 })).rejects.toThrow('wantedError: expected');
    await expect(scatter(hazy, { maxCollisions: 0 })).rejects.toThrow('maxCollisions: expected');
    await expect(scatter(hazy, { maxAtoms: NaN })).rejects.toThrow('maxAtoms: expected');
    await expect(scatter({ ...hazy, gas: pureGas('air', NaN, ROOM) })).rejects.toThrow('pressure: expected');
  });

  test('halves its standard error with four times the atoms', async () => {
    const few = await scatter(hazy, { wantedError: 1e-9, maxAtoms: 25 * CHUNK });
    const many = await scatter(hazy, { wantedError: 1e-9, maxAtoms: 100 * CHUNK });
    const ratio = few.summary.scatteredOnMirror.standardError / many.summary.scatteredOnMirror.standardError;
    expect(Math.abs(ratio - 2)).toBeLessThan(0.02); // shares differ by their own errors of 1 %
    const off = few.summary.scatteredOnMirror.value - many.summary.scatteredOnMirror.value;
    expect(Math.abs(off)).toBeLessThan(4 * few.summary.scatteredOnMirror.standardError);
  });
});

describe('a sweep of pressures', () => {
  test('reads from : to : how many and spaces them evenly in the logarithm', () => {
    const read = readPressureSweep('1e-6 mbar : 1 mbar : 13');
    if (!read.ok) throw new Error(read.message);
    expect(read.pressures).toHaveLength(13);
    expect(read.pressures[12]).toBe(100);
    read.pressures.forEach((p, i) => expect(Math.abs(p / (1e-4 * 10 ** (i / 2)) - 1)).toBeLessThan(ROUNDING));
    expect(readPressureSweep('1e-6mbar:1mbar:13')).toEqual(read);
    expect([...logSpaced(3, 3, 1)]).toEqual([3]);
  });

  test.each([
    ['1 mbar', 'from : to : how many'],
    ['0 Pa : 1 Pa : 3', 'above zero'],
    ['1 Pa : 2 kg : 3', 'pressure'],
    ['1 Pa : 2 Pa : 2.5', 'whole number'],
    ['1 Pa : 2 Pa : 0', 'whole number'],
  ])('refuses %j and says what would be right', (text, saying) => {
    const read = readPressureSweep(text);
    expect(read.ok ? '' : read.message).toContain(saying);
  });

  test('goes from all straight to all scattered, and loses none on the way', async () => {
    const results: ScatterResult[] = [];
    for (const pressure of [0, 1e-3, 1e-2, 0.1, 0.5])
      results.push(await scatter({ ...hazy, gas: { ...hazy.gas, pressure } }, { maxAtoms: CHUNK }));
    const straight = results.map(({ summary }) => summary.unscattered.value);
    expect(straight[0]).toBe(1);
    straight.forEach((value, i) => i > 0 && expect(value).toBeLessThan(straight[i - 1]!));
    expect(straight.at(-1)).toBeLessThan(0.01);
    for (const { summary } of results) {
      const { ballisticOnMirror, scatteredOnMirror, lost } = summary;
      expect(Math.abs(ballisticOnMirror.value + scatteredOnMirror.value + lost.value - 1)).toBeLessThan(ROUNDING);
    }
  });
});

describe('tracks', () => {
  test('are the first atoms of the calculation, from their filament to where they count', async () => {
    const tracks = await flyTracks(hazy, CHUNK);
    const { tally } = await scatter(hazy, { maxAtoms: CHUNK });
    const ballistic = new Float64Array(tally.ballistic.length);
    const scattered = new Float64Array(tally.scattered.length);
    for (const { slot, collisions } of tracks) (collisions === 0 ? ballistic : scattered)[slot]!++;
    expect({ ballistic, scattered }).toEqual({ ballistic: tally.ballistic, scattered: tally.scattered });
    for (const { points, collisions, place, isShortened, hasLeaps } of tracks) {
      if (!isShortened && !hasLeaps) expect(points).toHaveLength(3 * (collisions + 2));
      expect([...points.subarray(0, 3)]).toEqual([0.3, -0.2, 0.8]);
      const [x, y, z] = points.subarray(-3) as unknown as [number, number, number];
      const r = Math.hypot(x, y);
      if (place === FACE) expect(Math.abs(z - r ** 2 / 12)).toBeLessThan(ROUNDING);
      if (place === WALL) {
        const gaps = [1.3 - r, z + 0.3, 1.4 - z];
        expect(Math.abs(Math.min(...gaps))).toBeLessThan(ROUNDING);
      }
    }
  });

  test('are straight in vacuum, and keep to their limit of places in bad vacuum', async () => {
    for (const { points } of await flyTracks({ ...hazy, gas: VACUUM }, 20)) expect(points).toHaveLength(6);
    const wandering = await flyTracks({ ...hazy, gas: pureGas('air', 2, ROOM), leaps: false }, 5);
    for (const { points, isShortened } of wandering)
      expect(points.length <= 6000 && (!isShortened || points.length === 6000)).toBe(true);
    expect(wandering.some(({ isShortened }) => isShortened)).toBe(true);
  });
});
