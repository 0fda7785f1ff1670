import { describe, expect, test } from 'vitest';
import { tubeConductance } from '../../../engine/vacuum/conductance.ts';
import { lineConductance, lineOf, type LinePart } from '../../../engine/vacuum/line.ts';
import { logTable, NODE_PRESSURES, readLogPoints, readLogTableInto } from '../../../engine/vacuum/logTable.ts';
import { PUMP_KIND_TABLE, ROOTS_COMPRESSION } from '../../../engine/vacuum/pumpKinds.ts';
import type { Pump } from '../../../engine/vacuum/pumps.ts';
import { AIR, meanSpeedOf, MOLAR_MASSES, OTHER, WATER } from '../../../engine/vacuum/species.ts';
import { suctionOf, suctionReading } from '../../../engine/vacuum/suction.ts';
import { systemFrom } from './vacuums.ts';

const ROOM = 293.15;
const ROUNDING = 1e-12;

const tube = (diameter: number, length: number): LinePart => ({ part: 'tube', diameter, length });
const molecular = (parts: readonly LinePart[], species = AIR): number =>
  lineConductance(lineOf(parts, ROOM), species, 1e-7);

/** Speed for one species at the tank, m³/s. */
function speedAt(pump: Pump, pressure: number, species = AIR): number {
  const pair = new Float64Array(2);
  readLogTableInto(pair, logTable(pump.speeds[species]!), pressure);
  return pair[0]!;
}

const pumpFrom = (pump: object, more: object = {}): Pump =>
  systemFrom({
    pumps: [
      { name: 'rough', kind: 'rotary', speed: '50 l/s' },
      { name: 'it', ...pump },
    ],
    ...more,
  }).pumps[1]!;

describe('a line', () => {
  test('of one tube is that tube', () => {
    const expected = tubeConductance(0.1, 0.3, meanSpeedOf(MOLAR_MASSES[AIR]!, ROOM));
    expect(Math.abs(molecular([tube(0.1, 0.3)]) / expected - 1)).toBeLessThan(1e-6); // 1e-7 Pa is not quite nothing
  });

  test('cut in two is the same line within four per cent', () => {
    for (const length of [0.05, 0.1, 0.5, 2, 10]) {
      const [whole, halves] = [[tube(0.1, length)], [tube(0.1, length / 2), tube(0.1, length / 2)]].map((parts) =>
        molecular(parts),
      );
      // R. Haefer (1980) calls his theorem good to some per cent; the worst is near length = diameter
      expect(Math.abs(halves! / whole! - 1)).toBeLessThan(0.04);
    }
  });

  test('of nothing lets everything through', () => {
    expect(molecular([])).toBe(Infinity);
  });

  test('of an aperture and a wide tube is little less than the aperture', () => {
    const hole = molecular([{ part: 'aperture', diameter: 0.05 }]);
    const both = molecular([{ part: 'aperture', diameter: 0.05 }, tube(1, 0.1)]);
    expect(both).toBeLessThan(hole);
    expect(both / hole).toBeGreaterThan(0.999);
  });

  test('grows with every diameter and shrinks with every part', () => {
    const parts: LinePart[] = [tube(0.1, 1), { part: 'bend', diameter: 0.1, length: 0, angle: Math.PI / 2 }];
    const base = molecular(parts);
    expect(molecular([tube(0.12, 1), parts[1]!])).toBeGreaterThan(base);
    expect(molecular([...parts, { part: 'baffle', diameter: 0.1, transmission: 0.4 }])).toBeLessThan(base);
    expect(molecular([...parts, { part: 'aperture', diameter: 0.05 }])).toBeLessThan(base);
    expect(molecular([...parts, tube(0.2, 0.1)])).toBeLessThan(base);
  });

  test('of a baffle passes the share that it is said to', () => {
    const [open, baffled] = [1, 0.4].map((transmission) =>
      molecular([{ part: 'baffle', diameter: 0.5, transmission }]),
    );
    expect(baffled! / open!).toBeCloseTo(0.4, 6);
  });

  test('passes light molecules faster alone, and with the air in dense gas', () => {
    const line = lineOf([tube(0.1, 1)], ROOM);
    const ratio = (pressure: number): number =>
      lineConductance(line, WATER, pressure) / lineConductance(line, AIR, pressure);
    expect(ratio(1e-6)).toBeCloseTo(Math.sqrt(MOLAR_MASSES[AIR]! / MOLAR_MASSES[WATER]!), 5);
    expect(ratio(1e4)).toBeCloseTo(1, 3);
  });

  test('conducts better the denser the gas, but for Knudsen’s minimum of five per cent', () => {
    const line = lineOf([tube(0.1, 1), { part: 'baffle', diameter: 0.1, transmission: 0.5 }], ROOM);
    let best = 0;
    for (let p = 1e-5; p < 1e5; p *= 1.5) {
      const conductance = lineConductance(line, AIR, p);
      expect(conductance).toBeGreaterThan(0.95 * best);
      best = Math.max(best, conductance);
    }
  });
});

describe('a pump', () => {
  const diffusion = { kind: 'diffusion', speed: '1000 l/s' };

  test('has its rated speed in its range, and a constant flow of gas above it', () => {
    const pump = pumpFrom(diffusion);
    expect(speedAt(pump, 1e-3)).toBeCloseTo(1, 9);
    // nodes of the table lie beside the corners of the curve
    expect(speedAt(pump, 10) * 10).toBeCloseTo(speedAt(pump, 100) * 100, 3);
  });

  test('behind a line keeps what 1/S = 1/S₀ + 1/C leaves', () => {
    const line = [tube(0.2, 0.5)];
    const pump = pumpFrom({ ...diffusion, line: [{ part: 'tube', diameter: '20 cm', length: '50 cm' }] });
    const conductance = molecular(line);
    expect(Math.abs(speedAt(pump, 1e-5) / (1 / (1 + 1 / conductance)) - 1)).toBeLessThan(1e-4); // slip at 1e-5 Pa
  });

  test('counts as many as stand there', () => {
    expect(speedAt(pumpFrom({ ...diffusion, count: 3 }), 1e-3)).toBeCloseTo(3, 9);
    expect(pumpFrom({ ...diffusion, count: 3 }).ratedSpeed).toBeCloseTo(3, 12);
  });

  test('takes its own curve, straight in log–log, and its own speed for water', () => {
    const pump = pumpFrom({
      ...diffusion,
      curve: [
        ['1e-5 mbar', '800 l/s'],
        ['1e-3 mbar', '8 l/s'],
      ],
      waterSpeed: '2000 l/s',
    });
    expect(speedAt(pump, 1e-4)).toBeCloseTo(0.8, 9);
    expect(speedAt(pump, 1e-2) / 0.08).toBeCloseTo(1, 2);
    expect(speedAt(pump, 1) / 0.008).toBeCloseTo(1, 9);
    expect(speedAt(pump, 1e-4, WATER) / speedAt(pump, 1e-4)).toBeCloseTo(2, 9);
  });

  test('of the cold kind takes more water than air; each kind has a curve with rising pressures', () => {
    const pump = pumpFrom({ kind: 'cryo', speed: '1000 l/s' });
    expect(speedAt(pump, 1e-3, WATER)).toBeGreaterThan(2 * speedAt(pump, 1e-3));
    for (const { curve } of Object.values(PUMP_KIND_TABLE))
      curve.forEach(([pressure], i) => i > 0 && expect(pressure).toBeGreaterThan(curve[i - 1]![0]));
  });

  test('opens at the crossover unless it must not be opened so high', () => {
    expect(pumpFrom(diffusion, { crossover: '5e-2 mbar' }).opens).toBeCloseTo(5, 12);
    expect(pumpFrom(diffusion, { crossover: '1 mbar' }).opens).toBe(PUMP_KIND_TABLE.diffusion.opensBelow);
    expect(pumpFrom({ ...diffusion, from: '1 mbar' }).opens).toBeCloseTo(100, 12);
  });

  test('that roughs the tank closes where the first high-vacuum pump opens, or never', () => {
    const [rotary] = systemFrom({
      pumps: [
        { name: 'a', kind: 'rotary', speed: '50 l/s' },
        { name: 'b', kind: 'diffusion', speed: '1 m3/s' },
      ],
      crossover: '1 mbar',
    }).pumps;
    expect(rotary!.closes).toBe(PUMP_KIND_TABLE.diffusion.opensBelow);
    expect(systemFrom({ pumps: [{ name: 'a', kind: 'rotary', speed: '50 l/s' }] }).pumps[0]!.closes).toBe(0);
  });
});

describe('a Roots pump', () => {
  const train = systemFrom({
    pumps: [
      { name: 'rotary', kind: 'rotary', speed: '100 l/s', ultimate: '1e-2 mbar' },
      { name: 'roots', kind: 'roots', speed: '600 l/s', ultimate: '1e-9 mbar' },
    ],
  }).pumps;

  test('is held back by what backs it: S = S_R/(1 + S_R/(K S_B))', () => {
    const expected = 0.6 / (1 + 0.6 / (ROOTS_COMPRESSION * 0.1));
    expect(Math.abs(speedAt(train[1]!, 1) / expected - 1)).toBeLessThan(ROUNDING);
  });

  test('divides the ultimate pressure of what backs it by its compression', () => {
    expect(train[1]!.ultimate).toBeCloseTo(1 / ROOTS_COMPRESSION, 12);
  });

  test('takes the place of the rotary pump at the tank', () => {
    const [alone, both] = [[train[0]!], train].map((open) => {
      const reading = suctionReading();
      suctionOf(open, 0).readInto(reading, 10);
      return reading.speed[AIR]!;
    });
    expect(alone).toBeCloseTo(0.1, 9);
    expect(both).toBeCloseTo(speedAt(train[1]!, 10), 9);
  });
});

describe('open pumps', () => {
  test('add up, and bring back their speed times their ultimate pressure', () => {
    const { pumps } = systemFrom({
      pumps: [
        { name: 'a', kind: 'rotary', speed: '50 l/s', ultimate: '1e-2 mbar' },
        { name: 'b', kind: 'rotary', speed: '30 l/s', ultimate: '2e-2 mbar' },
      ],
    });
    const reading = suctionReading();
    suctionOf(pumps, 2).readInto(reading, 100);
    expect(reading.speed[AIR]).toBeCloseTo(0.08, 12);
    expect(reading.speed[OTHER]).toBeCloseTo(0.08, 12);
    expect(reading.speed[WATER]).toBeCloseTo(2.08, 12);
    expect(reading.backflow).toBeCloseTo(0.05 + 0.06, 12);
    expect(reading.slope[AIR]).toBe(0);
  });

  test('have slopes that are the derivatives of their speeds', () => {
    const { pumps } = systemFrom({
      pumps: [
        { name: 'a', kind: 'rotary', speed: '50 l/s', line: [{ part: 'tube', diameter: '5 cm', length: '2 m' }] },
        { name: 'b', kind: 'diffusion', speed: '1 m3/s', from: '1013 mbar' },
      ],
    });
    const suction = suctionOf(pumps, 0);
    const [below, at, above] = [suctionReading(), suctionReading(), suctionReading()];
    for (const pressure of [0.031, 0.4, 3.3, 77, 2100]) {
      suction.readInto(below, pressure * (1 - 1e-6));
      suction.readInto(at, pressure);
      suction.readInto(above, pressure * (1 + 1e-6));
      const slope = (above.speed[AIR]! - below.speed[AIR]!) / (2e-6 * pressure);
      // a difference over 2e-6 of 1 m³/s keeps ten digits
      expect(Math.abs(at.slope[AIR]! - slope)).toBeLessThan(1e-8 / pressure);
    }
  });
});

describe('tables against the logarithm of pressure', () => {
  test('pass through their nodes, stay between them, and are constant beyond', () => {
    const table = logTable(NODE_PRESSURES.map((p) => 1 / (1 + p)));
    const pair = new Float64Array(2);
    for (let i = 0; i + 1 < NODE_PRESSURES.length; i++) {
      readLogTableInto(pair, table, NODE_PRESSURES[i]!);
      expect(pair[0]).toBeCloseTo(table.values[i]!, 12);
      readLogTableInto(pair, table, Math.sqrt(NODE_PRESSURES[i]! * NODE_PRESSURES[i + 1]!));
      expect(pair[0]).toBeLessThanOrEqual(table.values[i]! + ROUNDING);
      expect(pair[0]).toBeGreaterThanOrEqual(table.values[i + 1]! - ROUNDING);
    }
    readLogTableInto(pair, table, 1e-12);
    expect([pair[0], pair[1]]).toEqual([table.values[0], 0]);
  });

  test('of points are straight in log–log, in log beside a zero, and constant beyond', () => {
    const points = [
      [1, 0],
      [100, 8],
      [1e4, 0.08],
    ] as const;
    expect(readLogPoints(points, 10)).toBeCloseTo(4, 12);
    expect(readLogPoints(points, 1000)).toBeCloseTo(0.8, 12);
    expect([0.1, 1, 100, 1e4, 1e6].map((p) => readLogPoints(points, p))).toEqual([0, 0, 8, 0.08, 0.08]);
  });
});
