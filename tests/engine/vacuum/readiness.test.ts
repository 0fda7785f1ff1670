import { describe, expect, test } from 'vitest';
import { presets } from '../../../presets/index.ts';
import { openPlantFile, type Plant } from '../../../engine/index.ts';
import { VACUUM_ASSUMPTIONS, VACUUM_CAUTIONS } from '../../../engine/vacuum/assumptions.ts';
import { GLOW_CAUTIONS, glowDose, type GlowSettings } from '../../../engine/vacuum/glow.ts';
import { pumpDown } from '../../../engine/vacuum/pumpDown.ts';
import { rateOfRise } from '../../../engine/vacuum/rateOfRise.ts';
import { readiness } from '../../../engine/vacuum/readiness.ts';
import { pumpSystem } from '../../../engine/vacuum/system.ts';
import { tankSpace } from '../../../engine/vacuum/tankSpace.ts';
import { digits, shareWords, timeWords } from '../../../engine/vacuum/words.ts';
import { FULL_PLANT, systemFrom } from './vacuums.ts';

const system = systemFrom(FULL_PLANT);
const curve = pumpDown(system);
const glow: GlowSettings = { pressure: 5, gas: 'air', voltage: 2000, current: 0.2, area: 5, duration: 900 };
const leaky = systemFrom({ ...FULL_PLANT, leak: '2 mbar l/s' });

function plantOf(id: string): Plant {
  const opened = openPlantFile(presets.find((preset) => preset.id === id)!.file);
  if (!opened.ok) throw new Error('the preset should open');
  return opened.plant;
}

describe('readiness', () => {
  test('is go where the pressure is reached in time', () => {
    const { tone, sentence, items } = readiness({ system, curve, available: 86_400 });
    expect([tone, items[0]!.tone, items[1]!.tone]).toEqual(['go', 'go', 'go']);
    expect(sentence).toMatch(/^Go: Reaches 1e-5 mbar after/);
    expect(items[1]!.figures['firing']).toBe(curve.reachedAt);
    expect(items.map(({ question }) => question)).toContain('Which phase takes longest?');
  });

  test('is no-go where the pressure is never reached, and says why first', () => {
    const { tone, sentence, items } = readiness({ system: leaky, curve: pumpDown(leaky), available: 3600 });
    expect(tone).toBe('no-go');
    expect(sentence).toMatch(/^No-go: Never reaches 1e-5 mbar: .*the leak lets in 2 mbar l\/s/);
    expect(items.find(({ question }) => question === 'What limits it?')!.answer).toContain('search for it first');
  });

  test('is go with care where it takes longer than there is', () => {
    const { tone, items } = readiness({ system, curve, available: 600 });
    expect(tone).toBe('watch');
    expect(items[1]!.answer).toContain('later than the 10 min there are');
  });

  test('tells of a line that throttles its pump', () => {
    const narrow = systemFrom({
      ...FULL_PLANT,
      pumps: FULL_PLANT.pumps.map((pump) =>
        pump.kind === 'diffusion' ? { ...pump, line: [{ part: 'tube', diameter: '30 cm', length: '1 m' }] } : pump,
      ),
    });
    const { items } = readiness({ system: narrow, curve: pumpDown(narrow) });
    expect(items.map(({ question }) => question)).toContain('Does “diffusion” pump as it could?');
  });

  test('takes in the glow discharge and the rate of rise', () => {
    const straight = Array.from({ length: 9 }, (_, i) => ({ time: 60 * i, pressure: 1e-2 * (1 + i) }));
    const { items } = readiness({ system, curve, glow: glowDose(glow), rise: rateOfRise(straight, 13) });
    const answer = (question: string): string => items.find((item) => item.question === question)?.answer ?? '';
    expect(answer('Will the glow discharge clean the glass?')).toMatch(
      /^It gives at most 2\.2e16 ions\/cm² and 7\.2 J\/cm²\.$/,
    );
    expect(answer('Is the tank tight?')).toMatch(/^A leak of/);
    const bad = readiness({ system, curve, rise: rateOfRise(straight.slice(0, 2), 13) });
    expect(bad.items.at(-1)!.answer).toContain('at least 6 readings');
  });
});

describe('a glow discharge', () => {
  test('outside the usual window says so', () => {
    const tones = (change: Partial<GlowSettings>): string[] =>
      glowDose({ ...glow, ...change })
        .findings.filter(({ tone }) => tone !== 'good')
        .map(({ text }) => text);
    expect(tones({})).toEqual([]);
    expect(tones({ pressure: 50 })[0]).toBe('The pressure of 0.5 mbar is above the usual 0.03 mbar to 0.15 mbar.');
    expect(tones({ duration: 60 })[0]).toBe('Burning for 60 s is below the usual 5 min to 30 min.');
    expect(tones({ voltage: 500 })[0]).toContain('below the usual 1 kV to 5 kV');
    expect(tones({ voltage: 8000 }).at(-1)).toContain('X-rays');
    expect(tones({ clearance: 0.05 })[0]).toContain('The dark space at the electrode is 6.7 cm thick');
    expect(glowDose({ ...glow, clearance: 0.2 }).findings.at(-1)!.tone).toBe('good');
  });

  test('of nothing is refused', () => {
    for (const change of [{ current: 0 }, { area: -1 }, { pressure: 0 }, { voltage: NaN }, { duration: Infinity }])
      expect(() => glowDose({ ...glow, ...change })).toThrow('expected a value above zero');
  });
});

describe('the room in the tank', () => {
  test('is the cylinder less glass and plug', () => {
    const plant = plantOf('tarn-hill-as-wired');
    const { volume, wallArea, faceArea } = tankSpace(plant);
    const { tank, shape } = plant;
    const depth = tank.highZ - tank.lowZ;
    expect(wallArea).toBeCloseTo(Math.PI * 3.4 * (1.7 + depth), 9);
    const [rim, hole] = [1.3 ** 2, 0.275 ** 2];
    expect(Math.abs(faceArea / (Math.PI * (rim - hole)) - 1)).toBeLessThan(1e-9);
    // paraboloid over the annulus: mean of r²/2R; flat back a tenth of the diameter below the lowest point
    const back = shape.thickness - hole / (2 * 11.96);
    const glass = Math.PI * (rim - hole) * ((rim + hole) / 2 / (2 * 11.96) + back);
    const plug = Math.PI * 0.25 ** 2 * 0.25;
    const expected = Math.PI * 1.7 ** 2 * depth - glass - plug;
    expect(Math.abs(volume - expected)).toBeLessThan(0.03 * plug + 1e-3 * glass); // grids of plug and glass
  });

  test('is never filled up, and obstacles outside it take nothing', () => {
    const plant = plantOf('tarn-hill-as-wired');
    const empty = tankSpace({ ...plant, solids: { ...plant.solids, count: 0 } }).volume;
    expect(empty).toBeGreaterThan(tankSpace(plant).volume);
    expect(tankSpace({ ...plant, tank: { ...plant.tank, highZ: plant.tank.lowZ + 0.2 } }).volume).toBeGreaterThan(0);
  });
});

describe('the presets’ vacuum', () => {
  const verdict = (id: string): { readonly tone: string; readonly sentence: string } => {
    const own = pumpSystem(plantOf(id))!;
    return readiness({ system: own, curve: pumpDown(own) });
  };

  test('at Tarn Hill is sound and limited by water from its old wall', () => {
    expect(verdict('tarn-hill-as-wired').sentence).toMatch(/^Go: Reaches 1e-5 mbar after 2 h.*“tank wall”/);
    expect(pumpSystem(plantOf('tarn-hill-second-ring'))).toEqual(pumpSystem(plantOf('tarn-hill-as-wired')));
  });

  test('at Saltmarsh Head leaks too much', () => {
    expect(verdict('spider-shadow')).toMatchObject({
      tone: 'no-go',
      sentence: expect.stringContaining('the leak') as string,
    });
  });

  test('at Larch Street waits for an old rubber gasket', () => {
    expect(verdict('teaching-tank').sentence).toContain('“old rubber gasket”');
  });

  test('at Great Skerry freezes its water', () => {
    expect(verdict('crucibles-8m').tone).toBe('go');
  });

  test('elsewhere is not described', () => {
    expect(pumpSystem(plantOf('flat-test-plate'))).toBeNull();
  });
});

test('every assumption names a source, every caution is a sentence', () => {
  for (const { statement, source } of VACUUM_ASSUMPTIONS) {
    expect(statement).toMatch(/\.$/);
    expect(source.length).toBeGreaterThan(5);
  }
  for (const caution of [...GLOW_CAUTIONS, ...VACUUM_CAUTIONS]) expect(caution).toMatch(/^[A-Z].*\.$/);
});

test('numbers are said in short', () => {
  expect([0, 1e-5, 3.44e-6, 0.0151, 0.15, 900, 12345, 1e7].map((value) => digits(value))).toEqual([
    '0',
    '1e-5',
    '3.4e-6',
    '0.015',
    '0.15',
    '900',
    '1.2e4',
    '1e7',
  ]);
  expect([7, 99, 120, 2491, 7560, 90_000, 260_000, 2_592_000].map(timeWords)).toEqual([
    '7 s',
    '99 s',
    '2 min',
    '42 min',
    '2 h 6 min',
    '25 h',
    '3 d',
    '30 d',
  ]);
  expect([0, 0.004, 0.5, 1].map(shareWords)).toEqual(['0 %', 'under 1 %', '50 %', '100 %']);
});
