import { describe, expect, test } from 'vitest';
import { firstFlightSurvival } from '../../engine/gas/freePath.ts';
import { createEvaluator, openPlantFile, type DesignFile } from '../../engine/index.ts';
import { presets } from '../../presets/index.ts';
import { changedPlant, teachingBench } from '../../viewer/stages/learn/bench.ts';
import { indexChoices, nearestChoices, rangeChoices } from '../../viewer/stages/learn/choices.ts';
import { arrivalsAt, COMPARED, dirtyFacts } from '../../viewer/stages/learn/facts/dirtyGas.ts';
import { failedFacts, feedOf, missingShare } from '../../viewer/stages/learn/facts/failed.ts';
import { fly, meanThrow, nextCorner, partOfFlight } from '../../viewer/stages/learn/facts/flights.ts';
import { atomPath, pressureOfPath, stateAt } from '../../viewer/stages/learn/facts/freePath.ts';
import { diameterLine, summed, thicknessByFilament } from '../../viewer/stages/learn/facts/lineDeposit.ts';
import { IMPATIENT, indexFrom, patienceFacts, timeOfPressure } from '../../viewer/stages/learn/facts/patience.ts';
import { GOOD_VACUUM, nozzleOf, raisedFacts, scatteringPressure } from '../../viewer/stages/learn/facts/raised.ts';
import { ringsFacts } from '../../viewer/stages/learn/facts/rings.ts';
import { FIRST_REGION, magnification, scaleFacts } from '../../viewer/stages/learn/facts/scale.ts';
import { deepest, shadowFacts, shadowWidth } from '../../viewer/stages/learn/facts/shadow.ts';
import { fallTo, thinEdgeFacts } from '../../viewer/stages/learn/facts/thinEdge.ts';
import { meanVapourSpeed } from '../../viewer/stages/learn/facts/straight.ts';
import type { Bench, Tools } from '../../viewer/stages/learn/lesson.ts';
import { sayIn } from '../../viewer/stages/learn/say.ts';

const evaluator = createEvaluator();
const tools: Tools = { evaluate: async (plant, options) => evaluator.evaluate(plant, options), step: () => {} };

function preset(id: string): Bench {
  const file = presets.find((item) => item.id === id)?.file;
  const opened = openPlantFile(file);
  if (!opened.ok) throw new Error(`preset ${id} cannot be opened`);
  return { file: opened.file, files: new Map(), plant: opened.plant };
}

const big = preset('tarn-hill-as-wired');
const small = teachingBench();

/** A flat mirror under one small isotropic source above its middle: all closed forms are at hand. */
function onePoint(height = '0.5 m'): Bench {
  const file = {
    format: 'evenfall',
    version: 1,
    name: 'Tarn Hill point source',
    mirror: { radiusOfCurvature: '1e9 m', conicConstant: 0, outerDiameter: '1 m', facing: 'up' },
    tank: { diameter: '3 m', depth: '2 m' },
    filamentTypes: { point: { emission: { law: 'isotropic' } } },
    filaments: [
      {
        arrangement: 'list',
        name: 'point',
        type: 'point',
        filaments: [{ position: ['0 m', '0 m', height], charge: '1 g' }],
      },
    ],
    vacuum: { pressure: '1e-5 mbar' },
  };
  const opened = openPlantFile(file);
  if (!opened.ok) throw new Error(JSON.stringify(opened.problems));
  return { file: file as unknown as DesignFile, files: new Map(), plant: opened.plant };
}

const shareRight = (choices: readonly { readonly isRight: boolean }[]): boolean[] => choices.map((c) => c.isRight);
const said = { right: 'yes', wrong: 'no' };

describe('choices', () => {
  const ranges = [{ text: 'low', below: 1 }, { text: 'middle', below: 10 }, { text: 'high' }];

  test('a range takes its lower end and leaves its upper one to the next; the last has no end', () => {
    expect(shareRight(rangeChoices(0.999, ranges, said))).toEqual([true, false, false]);
    expect(shareRight(rangeChoices(1, ranges, said))).toEqual([false, true, false]);
    expect(shareRight(rangeChoices(10, ranges, said))).toEqual([false, false, true]);
    expect(shareRight(rangeChoices(Infinity, ranges, said))).toEqual([false, false, true]);
  });

  test('the nearest is nearest by ratio, not by difference', () => {
    const choices = [1, 100].map((value) => ({ text: String(value), value }));
    expect(shareRight(nearestChoices(9, choices, said))).toEqual([true, false]);
    expect(shareRight(nearestChoices(11, choices, said))).toEqual([false, true]);
  });

  test('right and wrong choices are told apart by what they say', () => {
    expect(indexChoices(1, ['a', 'b'], said).map(({ feedback }) => feedback)).toEqual(['no', 'yes']);
  });
});

/** Rounding of sums over a few loops. */
const ROUNDING = 1e-9;

describe('the inverse square and the cosines', () => {
  test('a point source over a flat plate gives cos³ of the angle, the product of the three factors', async () => {
    const facts = await thinEdgeFacts(onePoint().plant);
    const { along, near, thickness, distance } = facts;
    for (let i = 0; i < along.length; i += 10) {
      const cos = 0.5 / Math.hypot(0.5, along[i]!);
      const best = 0.5 / Math.hypot(0.5, along[near]!);
      expect(thickness[i]! / thickness[near]!).toBeCloseTo((cos / best) ** 3, 8);
      const fall = fallTo(facts, i);
      expect(fall.distance * fall.arrival * fall.emission).toBeCloseTo(fall.total, 8);
      expect(distance[i]).toBeCloseTo(Math.hypot(0.5, along[i]!), 9);
    }
  });

  test('in a real tank the three factors explain the engine’s coat to what the length of a filament allows', async () => {
    const facts = await thinEdgeFacts(big.plant);
    const { total, distance, arrival, emission } = fallTo(facts, facts.far);
    const LENGTH_OF_FILAMENT = 0.01; // (64 mm / 0.84 m)², and some
    expect(Math.abs((distance * arrival * emission) / total - 1)).toBeLessThan(LENGTH_OF_FILAMENT);
    expect(facts.law).toBe('coil');
  });

  test('filaments along a line add up to the map of the whole coat', async () => {
    const { plant } = big;
    const coat = await evaluator.evaluate(plant, { points: 3000, rays: 0 });
    const { along, points } = diameterLine(plant, 0, 41);
    const total = summed(await thicknessByFilament(plant, points));
    // the profile's mean around the circle: 36 filaments outside the rim leave a ripple
    const RIPPLE = 0.01;
    along.forEach((s, i) => {
      const at = coat.profile.radius.findIndex((r) => r >= Math.abs(s));
      const [r0, r1] = [coat.profile.radius[Math.max(0, at - 1)]!, coat.profile.radius[at]!];
      const u = r1 > r0 ? (Math.abs(s) - r0) / (r1 - r0) : 0;
      const mean = coat.profile.mean[Math.max(0, at - 1)]! * (1 - u) + coat.profile.mean[at]! * u;
      expect(Math.abs(total[i]! / mean - 1)).toBeLessThan(RIPPLE);
    });
  });
});

describe('a shadow', () => {
  test('of a point source has the width that similar triangles give', async () => {
    const bench = onePoint();
    const { low, half, high } = await shadowFacts(bench, tools);
    const PLACES = 161;
    for (const line of [low, half, high]) {
      // the plate hangs parallel to the flat face: its shadow is larger by the ratio of the distances
      const wide = line.plate.diameter / (1 - line.plate.share);
      const reach = line.center[0] / (1 - line.plate.share);
      const left = Math.max(-0.5, reach - wide / 2);
      const right = Math.min(0.5, reach + wide / 2);
      expect(Math.abs(shadowWidth(line) - Math.max(0, right - left))).toBeLessThan(2 / PLACES);
      expect(deepest(line.oneClear, line.oneShaded)).toBe(right > left ? 1 : 0);
    }
  });

  test('takes less from the whole coat than from the filament that casts it', async () => {
    const { half } = await shadowFacts(big, tools);
    expect(deepest(half.oneClear, half.oneShaded)).toBeCloseTo(1, 9);
    expect(deepest(half.clear, half.shaded)).toBeLessThan(0.5);
    half.clear.forEach((value, i) => expect(half.shaded[i]!).toBeLessThanOrEqual(value * (1 + ROUNDING)));
  });
});

describe('rings', () => {
  test('a second ring evens the coat, and a wide ring wastes more than a filament over the middle', async () => {
    const { coats } = await ringsFacts(big, tools);
    expect([coats.one, coats.ring, coats.rings].map(({ plant }) => plant.filaments.length)).toEqual([1, 24, 36]);
    // the nearer to the middle, the more of the vapour meets glass
    expect(coats.one.statistics.collection.value).toBeGreaterThan(coats.rings.statistics.collection.value);
    expect(coats.rings.statistics.collection.value).toBeGreaterThan(coats.ring.statistics.collection.value);
    expect(coats.rings.statistics.uniformity.value).toBeLessThan(coats.ring.statistics.uniformity.value);
  });
});

describe('a failed filament', () => {
  test('takes from each place just what it laid there', async () => {
    const { full, failed, plant, cold, deepest: most } = await failedFacts(big, tools);
    const missing = missingShare(full, failed);
    const { points } = full.face;
    const each = await thicknessByFilament(plant, points);
    for (let i = 0; i < points.count; i += 97)
      expect(missing[i]).toBeCloseTo(each[cold]![i]! / summed(each.map((one) => one.subarray(i, i + 1)))[0]!, 9);
    expect(most).toBeGreaterThan(1 / 36);
    expect(most).toBeLessThan(1);
  });

  test('a feed is itself and its neighbours on the same feed', () => {
    const feed = feedOf(big.plant, 0);
    expect(feed).toHaveLength(6);
    expect(feed).toContain(0);
    for (const i of feed) expect(big.plant.filaments[i]!.feed).toBe(big.plant.filaments[0]!.feed);
  });

  test('a tank with one filament is lent a ring that lays the wanted thickness', async () => {
    const { isBorrowed, full, count } = await failedFacts(small, tools);
    expect(isBorrowed).toBe(true);
    // four wires of 100 mm find room around a mirror of 150 mm
    expect(count).toBe(4);
    expect(full.statistics.mean.value / small.plant.film.target).toBeCloseTo(1, 6);
  });
});

describe('flights', () => {
  test('in good vacuum are straight and keep their length when cut in parts', async () => {
    const flights = await fly(small.plant, { pressure: GOOD_VACUUM, count: 60 }, tools);
    expect(flights).toHaveLength(60);
    expect(flights.every(({ collisions, points }) => collisions === 0 && points.length === 6)).toBe(true);
    const [flight] = flights;
    const half = partOfFlight(flight!, 0.5);
    const way = Math.hypot(...[0, 1, 2].map((k) => half[3 + k]! - half[k]!));
    expect(way / flight!.length).toBeCloseTo(0.5, 9);
    expect(partOfFlight(flight!, 1).slice(-3)).toEqual(
      Array.from(flight!.points.slice(-3), (v) => expect.closeTo(v, 9)),
    );
    expect(nextCorner(flight!, 0)).toBe(1);
    expect(meanThrow(flights)).toBeGreaterThan(0.1);
  });

  test('the same seeds give the same atoms', async () => {
    const options = { pressure: 0.01, count: 30 };
    expect(await fly(big.plant, options, tools)).toEqual(await fly(big.plant, options, tools));
  });

  test('a bent flight is stepped from collision to collision', async () => {
    const flights = await fly(big.plant, { pressure: 0.05, count: 30 }, tools);
    const bent = flights.find(({ collisions }) => collisions >= 2)!;
    let share = 0;
    let corners = 0;
    while (share < 1 && corners < 5000) {
      const next = nextCorner(bent, share);
      expect(next).toBeGreaterThan(share);
      share = next;
      corners++;
    }
    expect(corners).toBe(bent.points.length / 3 - 1);
  });

  test('vapour of 1500 K leaves at the mean speed of an effusing gas', () => {
    // 3/4 √(2πkT/m): effusive mean speed, from memory of kinetic theory texts (3π/8 times the mean speed of the gas)
    const expected = 0.75 * Math.sqrt((2 * Math.PI * 1.380649e-23 * 1500) / (26.98154e-3 / 6.02214076e23));
    expect(meanVapourSpeed() / expected).toBeCloseTo(1, 3);
  });

  test('the pressure of halving halves the first flights, and gas widens the spot and starves the mirror', async () => {
    const { way } = nozzleOf(big.plant, 0);
    const halving = scatteringPressure(big.plant, way);
    const gas = { pressure: halving, temperature: big.plant.vacuum.temperature, mixture: { air: 1 } };
    expect(firstFlightSurvival(gas, way)).toBeCloseTo(0.5, 6);
    const facts = await raisedFacts(big, tools);
    expect(facts.clearShare.value).toBeGreaterThan(0.97);
    expect(facts.thickShare.value).toBeLessThan(facts.clearShare.value - 5 * facts.thickShare.standardError);
    expect(facts.thickSpot).toBeGreaterThan(2 * facts.clearSpot);
    // cosine power n: mean of tan² is 2/(n − 1) to first order; the face is a little off perpendicular
    expect(facts.clearSpot / (facts.way * Math.sqrt(2 / 399))).toBeGreaterThan(0.85);
    expect(facts.clearSpot / (facts.way * Math.sqrt(2 / 399))).toBeLessThan(1.3);
  });
});

describe('free path', () => {
  test('is inverse to the pressure, and the pressure of a way gives that way back', () => {
    expect(atomPath(big.plant, 10) / atomPath(big.plant, 1)).toBeCloseTo(0.1, 12);
    expect(atomPath(big.plant, pressureOfPath(big.plant, 3.4))).toBeCloseTo(3.4, 9);
  });

  test('the flow is molecular in high vacuum and viscous near the atmosphere', () => {
    expect(stateAt(big.plant, 1e-4)).toMatchObject({ regime: 'molecular', range: 'high vacuum' });
    expect(stateAt(big.plant, 1e3).regime).toBe('viscous');
  });
});

describe('dirty gas', () => {
  test('a hundredth of the pressure brings a hundredth of the molecules, and a shot twice as long twice as many', async () => {
    const facts = await dirtyFacts(big, tools);
    const [a, b] = COMPARED.map((pressure) => arrivalsAt(big.plant, facts, pressure, 60).striking);
    expect(a! / b!).toBeCloseTo(100, 6);
    const slow = arrivalsAt(big.plant, facts, COMPARED[1], 120).striking;
    expect(slow / b!).toBeCloseTo(2, 9);
  });

  test('air at 1e-5 mbar strikes as kinetic theory says', async () => {
    const facts = await dirtyFacts(big, tools);
    const { striking, atoms } = arrivalsAt(big.plant, facts, 1e-3, 60);
    // 2.9e14 molecules of air per cm² and second at 1e-6 mbar and 20 °C: vacuum handbooks, from memory
    const HANDBOOK = 2.9e19;
    const HANDBOOK_DIGITS = 0.02;
    expect(Math.abs((striking * atoms) / HANDBOOK - 1)).toBeLessThan(HANDBOOK_DIGITS);
  });
});

describe('patience', () => {
  test('the tank passes the impatient pressure before the wanted one, and is cleaner then', async () => {
    const { curve, early, ready, ratio, firingPressure, waterShare } = await patienceFacts(big, tools);
    expect(early).toBeLessThan(ready);
    expect(timeOfPressure(curve, firingPressure)! / ready).toBeCloseTo(1, 3);
    expect(timeOfPressure(curve, 1e-30)).toBeNull();
    expect(ratio[indexFrom(curve, early)]!).toBeGreaterThan(ratio[indexFrom(curve, ready)]!);
    expect(curve.pressure[indexFrom(curve, early)]!).toBeLessThanOrEqual(IMPATIENT * firingPressure * (1 + ROUNDING));
    expect(waterShare).toBeGreaterThan(0);
    expect(waterShare).toBeLessThan(1);
  });

  test('a design without pumps says what is missing', async () => {
    await expect(patienceFacts(onePoint(), tools)).rejects.toThrow(/no pumping system/);
  });
});

describe('the scale', () => {
  test('the coat over the region is its share of the region', async () => {
    const facts = await scaleFacts(big, tools);
    const by = magnification(facts, FIRST_REGION);
    expect(by * 2.6).toBeCloseTo(FIRST_REGION, 6);
    expect(facts.surfacePeakToValley).toBeGreaterThan(facts.surfaceRms);
    expect(facts.surfaceRms).toBeGreaterThan(0);
    expect(facts.surfacePeakToValley).toBeLessThanOrEqual(
      facts.coat.statistics.maximum.value - facts.coat.statistics.minimum.value,
    );
  });
});

describe('refusals', () => {
  test('a design whose filaments are all cold says so', async () => {
    const bench = onePoint();
    const plant = changedPlant(bench, (file) => ({
      ...file,
      filaments: file.filaments.map((set) => ({ ...set, exceptions: [{ filament: 1, outOfUse: true }] })),
    }));
    await expect(thinEdgeFacts(plant)).rejects.toThrow(/no filament of this design evaporates anything/);
  });
});

describe('numbers in sentences', () => {
  const say = sayIn({ length: 'in', thickness: 'Å', mass: 'mg', pressure: 'Torr', temperature: 'degC' });

  test('stand in the user’s units, on one line with them', () => {
    expect(say.length(0.0254)).toBe('1.0\u00a0in');
    expect(say.thickness(100e-9)).toBe('1000\u00a0Å');
    expect(say.pressure(101325)).toBe('760\u00a0Torr');
    expect(say.percent(0.5)).toBe('50\u00a0%');
    expect(say.millimetres(1.5e-3)).toBe('1.5\u00a0mm');
  });

  test.each([
    [7200, '2\u00a0h'],
    [150, '2.5\u00a0min'],
    [60, '60\u00a0s'],
    [1.2e-3, '1.2\u00a0ms'],
    [150e-6, '150\u00a0µs'],
  ])('a time of %d s is written %s', (seconds, text) => {
    expect(say.time(seconds)).toBe(text);
  });
});
