import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { pumpDown } from '../../../engine/vacuum/pumpDown.ts';
import { eventOf, indexAt, pressureAt, type PumpDownCurve } from '../../../engine/vacuum/pumpDownCurve.ts';
import type { PumpSystem } from '../../../engine/vacuum/system.ts';
import { FULL_PLANT, steadyPump, systemFrom } from './vacuums.ts';

const SEED = { seed: 20_261_125, numRuns: 25 };
/** Balance over all gas: what the stage equations leave over in a few hundred steps. */
const BALANCE = 1e-9;
/** Integration: 1e-6 a step. */
const INTEGRATION = 1e-5;

const plant = systemFrom(FULL_PLANT);
const curve = pumpDown(plant);

function imbalance({ balance }: PumpDownCurve): number {
  const { atStart, atEnd, removed, brought } = balance;
  return Math.abs(atStart + brought - removed - atEnd) / (atStart + brought);
}

/** Systems of one to three pumps with surfaces and a leak, drawn at random. */
const anySystem = fc
  .record({
    rotary: fc.integer({ min: 5, max: 300 }),
    diffusion: fc.integer({ min: 500, max: 30_000 }),
    hasRoots: fc.boolean(),
    leak: fc.double({ min: 0, max: 0.05, noNaN: true }),
    material: fc.constantFrom('stainless steel', 'mild steel', 'aluminium', 'old coating'),
    seals: fc.double({ min: 0.01, max: 0.5, noNaN: true }),
    glow: fc.boolean(),
    length: fc.double({ min: 0.1, max: 5, noNaN: true }),
  })
  .map((draw) => ({
    pumps: [
      {
        name: 'rotary',
        kind: 'rotary',
        speed: `${draw.rotary} l/s`,
        line: [{ part: 'tube', diameter: '120 mm', length: `${draw.length} m` }],
      },
      ...(draw.hasRoots ? [{ name: 'roots', kind: 'roots', speed: `${3 * draw.rotary} l/s` }] : []),
      {
        name: 'diffusion',
        kind: 'diffusion',
        speed: `${draw.diffusion} l/s`,
        line: [{ part: 'baffle', diameter: '50 cm' }],
      },
    ],
    surfaces: [{ material: draw.material }, { material: 'fluoroelastomer', area: `${draw.seals} m2` }],
    leak: `${draw.leak} mbar l/s`,
    ...(draw.glow ? { glow: {} } : {}),
  }));

describe('all gas is accounted for', () => {
  test('from the atmosphere on, in a full plant', () => {
    expect(imbalance(curve)).toBeLessThan(BALANCE);
  });

  test('from high vacuum on, where loads bring most of the gas', () => {
    const late = pumpDown({ ...plant, glow: null }, { from: 1e-2, longest: 86_400, until: 1e-5 });
    expect(late.balance.brought).toBeGreaterThan(10 * late.balance.atStart);
    expect(imbalance(late)).toBeLessThan(BALANCE);
  });

  test('in any plant', () => {
    fc.assert(
      fc.property(anySystem, (system) => {
        expect(imbalance(pumpDown(systemFrom(system)))).toBeLessThan(BALANCE);
      }),
      SEED,
    );
  });

  test('and the loads along the curve add up to what was brought', () => {
    // trapezoids between the points of the curve: some 25 to a decade
    let brought = 0;
    for (let i = 1; i < curve.count; i++) {
      const step = curve.time[i]! - curve.time[i - 1]!;
      for (const { flow } of curve.loads) brought += (step * (flow[i]! + flow[i - 1]!)) / 2;
    }
    expect(Math.abs(brought / curve.balance.brought - 1)).toBeLessThan(0.02);
  });
});

test('a gas that has all but gone is never less than nothing', () => {
  // no surfaces, so that the moisture of the start dies away to the smallest of numbers
  const system = systemFrom({
    volume: '13 l',
    pumps: [
      { name: 'rotary', kind: 'rotary', speed: '56 l/s' },
      { name: 'diffusion', kind: 'diffusion', speed: '920 l/s', count: 4 },
    ],
    surfaces: [],
    leak: '7 mbar l/s',
  });
  const { partial, count } = pumpDown(system);
  for (const values of partial) expect(values.every((value) => value >= 0)).toBe(true);
  expect(partial[1]![count - 1]).toBeLessThan(1e-30);
});

describe('what must be so', () => {
  const timeOf = (system: PumpSystem): number => pumpDown(system).reachedAt ?? Infinity;
  /** Two runs, each with its own steps. */
  const NOISE = 1 + INTEGRATION;

  test('a leak never makes it faster', () => {
    fc.assert(
      fc.property(anySystem, fc.double({ min: 0, max: 0.01, noNaN: true }), (system, more) => {
        const tight = systemFrom(system);
        expect(timeOf({ ...tight, leak: tight.leak + more })).toBeGreaterThanOrEqual(timeOf(tight) / NOISE);
      }),
      SEED,
    );
  });

  test('more speed never makes it slower', () => {
    fc.assert(
      fc.property(anySystem, fc.double({ min: 1, max: 4, noNaN: true }), (system, factor) => {
        const slow = systemFrom(system);
        const fast = {
          ...slow,
          pumps: slow.pumps.map((pump) => ({
            ...pump,
            speeds: pump.speeds.map((table) => table.map((s) => factor * s)),
          })),
        };
        expect(timeOf(fast)).toBeLessThanOrEqual(timeOf(slow) * NOISE);
      }),
      SEED,
    );
  });

  test('a longer line, more surface, a longer or damper venting never make it faster', () => {
    const base = timeOf(plant);
    const slower: PumpSystem[] = [
      systemFrom({ ...FULL_PLANT, surfaces: [...FULL_PLANT.surfaces, { material: 'neoprene', area: '0.1 m2' }] }),
      systemFrom({
        ...FULL_PLANT,
        pumps: FULL_PLANT.pumps.map((pump) => ({
          ...pump,
          line: [...pump.line, { part: 'tube', diameter: '15 cm', length: '3 m' }],
        })),
      }),
      systemFrom({ ...FULL_PLANT, venting: { open: '300 h' } }),
    ];
    for (const system of slower) expect(timeOf(system)).toBeGreaterThan(base);
    expect(timeOf(systemFrom({ ...FULL_PLANT, venting: { air: 'dry' } }))).toBeLessThan(base);
    expect(timeOf(systemFrom({ ...FULL_PLANT, coldTrap: { area: '1 m2' } }))).toBeLessThan(base);
  });

  test('pressure never rises while nothing changes but the clock', () => {
    for (let i = 1; i < curve.count; i++)
      expect(curve.pressure[i]!).toBeLessThanOrEqual(curve.pressure[i - 1]! * NOISE);
  });
});

describe('events', () => {
  test('come in the order of a pump-down, each at its pressure', () => {
    expect(curve.events.map(({ kind, name }) => `${kind} ${name}`.trim())).toEqual([
      'pump opens blower',
      'glow starts',
      'glow ends',
      'pump closes rotary',
      'pump closes blower',
      'crossover',
      'pump opens diffusion',
      'firing pressure',
    ]);
    expect(eventOf(curve, 'pump opens')!.pressure).toBeCloseTo(1000, 7);
    expect(eventOf(curve, 'glow starts')!.pressure).toBeCloseTo(5, 9);
    expect(eventOf(curve, 'firing pressure')!.pressure / 1e-3).toBeCloseTo(1, 9);
  });

  test('hold the glow discharge at its pressure for its time', () => {
    const [start, end] = [eventOf(curve, 'glow starts')!, eventOf(curve, 'glow ends')!];
    expect(end.time - start.time).toBeCloseTo(900, 6);
    for (let i = indexAt(curve, start.time); i <= indexAt(curve, end.time); i++)
      expect(curve.pressure[i]! / 5).toBeCloseTo(1, 9);
  });

  test('do not depend on the pressure that is asked for', () => {
    const other = pumpDown(plant, { until: 2e-4 });
    expect(Math.abs(eventOf(other, 'crossover')!.time / eventOf(curve, 'crossover')!.time - 1)).toBeLessThan(
      INTEGRATION,
    );
  });

  test('let the high-vacuum pumps wait for the glow discharge, however low its pressure', () => {
    const low = pumpDown(systemFrom({ ...FULL_PLANT, crossover: '0.5 mbar', glow: { pressure: '3e-2 mbar' } }));
    expect(eventOf(low, 'crossover')!.time).toBe(eventOf(low, 'glow ends')!.time);
  });

  test('leave nothing to do where a pump starts at once and the start is below the target', () => {
    const at = pumpDown(systemFrom({ pumps: [steadyPump('10 l/s')], surfaces: [] }), { from: 100, until: 200 });
    expect(at.reachedAt).toBe(0);
    expect(at.count).toBeGreaterThan(1);
  });
});

describe('the curve', () => {
  test('has times that rise, positive pressures, and partial pressures that add up', () => {
    for (let i = 0; i < curve.count; i++) {
      if (i > 0) expect(curve.time[i]!).toBeGreaterThan(curve.time[i - 1]!);
      const sum = curve.partial.reduce((total, values) => total + values[i]!, 0);
      expect(sum).toBe(curve.pressure[i]!);
      expect(curve.partial.every((values) => values[i]! >= 0)).toBe(true);
    }
  });

  test('goes on to three times the time of the firing pressure', () => {
    expect(curve.time.at(-1)! / curve.reachedAt!).toBeCloseTo(3, 9);
  });

  test('can be read at any time', () => {
    const i = 100;
    expect(pressureAt(curve, curve.time[i]!)).toBeCloseTo(curve.pressure[i]!, 9);
    const between = pressureAt(curve, (curve.time[i]! + curve.time[i + 1]!) / 2);
    expect(between).toBeLessThan(curve.pressure[i]!);
    expect(between).toBeGreaterThan(curve.pressure[i + 1]!);
  });

  test('is the same each time', () => {
    expect(pumpDown(plant)).toEqual(curve);
  });
});

test('a pump-down takes no longer than a person notices', () => {
  const seconds = Array.from({ length: 5 }, () => {
    const start = performance.now();
    pumpDown(plant);
    return (performance.now() - start) / 1000;
  });
  // the fastest of five: 8 ms measured on two busy cores, with ten times as much for slower machines
  expect(Math.min(...seconds)).toBeLessThan(0.08);
});

test.each([
  ['until', { until: 0 }],
  ['until', { until: -1 }],
  ['until', { until: NaN }],
  ['until', { until: 2e5 }],
  ['from', { from: 0 }],
  ['from', { from: 3e5 }],
  ['longest', { longest: 0 }],
])('a bad %s is refused', (name, options) => {
  expect(() => pumpDown(plant, options)).toThrow(`${name}: expected`);
});
