import { beforeAll, describe, expect, test } from 'vitest';
import { formatProblem, openPlantFile, type DesignFile, type Plant } from '../../engine/index.ts';
import { eventOf } from '../../engine/vacuum/pumpDownCurve.ts';
import { presets } from '../../presets/index.ts';
import { asKind } from '../../viewer/panels/plant/fields/KindControl.tsx';
import { FORMS, fieldsOf } from '../../viewer/panels/plant/fields/readSchema.ts';
import { startOf, withNextItem } from '../../viewer/panels/plant/fields/starts.ts';
import type { Field } from '../../viewer/panels/plant/fields/field.ts';
import { withValue } from '../../viewer/state/edits/path.ts';
import { goItems, goVerdict } from '../../viewer/stages/vacuum/go/goItems.ts';
import { gasCase } from '../../viewer/stages/vacuum/gas/gasCase.ts';
import { pumpingCase, type PumpingCase } from '../../viewer/stages/vacuum/pumping/pumpingCase.ts';
import { loadsChart, pressureChart, timeUnitOf } from '../../viewer/stages/vacuum/pumping/pumpingChart.ts';
import { STARTING_SYSTEM } from '../../viewer/stages/vacuum/pumping/startingSystem.ts';
import type { VacuumState } from '../../viewer/stages/vacuum/useVacuum.ts';
import { vacuumWords } from '../../viewer/stages/vacuum/vacuumText.ts';

const METRIC = { length: 'm', thickness: 'nm', mass: 'mg', pressure: 'mbar', temperature: 'degC' };
const WORDS = vacuumWords(METRIC);
const BARE = withValue(presets[0]!.file, ['vacuum', 'system'], undefined) as DesignFile;
const WITH_SYSTEM = withValue(BARE, ['vacuum', 'system'], STARTING_SYSTEM) as DesignFile;

function opened(file: DesignFile): Plant {
  const result = openPlantFile(file);
  if (!result.ok) throw new Error(result.problems.map(formatProblem).join('\n'));
  return result.plant;
}

let pumping: PumpingCase;
beforeAll(() => {
  pumping = pumpingCase(opened(WITH_SYSTEM), WORDS)!;
});

const NOTHING_READ = { readings: [], orderFaults: [] };

function stateOf(plant: Plant): VacuumState {
  return {
    plant,
    coat: null,
    gas: gasCase(plant),
    film: null,
    pumping: pumpingCase(plant, WORDS),
    glow: null,
    pumpDownRead: NOTHING_READ,
    riseRead: NOTHING_READ,
    rise: null,
  };
}

describe('the system to begin with', () => {
  test('is sound and reaches the pressure of the shot', () => {
    expect(pumping.curve.reachedAt).toBeGreaterThan(0);
    expect(eventOf(pumping.curve, 'crossover')).not.toBeNull();
  });

  test('a design without a system has no pump-down, and says so in its verdict', () => {
    const state = stateOf(opened(BARE));
    expect(state.pumping).toBeNull();
    expect(goVerdict(state, METRIC).second).toMatch(/does not describe/);
  });
});

describe('the pump-down as charts', () => {
  const rises = (values: ArrayLike<number>): boolean =>
    Array.from(values).every((value, i, all) => i === 0 || value > all[i - 1]!);

  test('times rise strictly, through events that stand at one time', () => {
    const { series } = pressureChart(pumping, [], METRIC);
    expect(series.map(({ label }) => label)).toEqual(['total', 'water vapour']);
    for (const { x } of series) expect(rises(x)).toBe(true);
  });

  test('measured readings lie over it in its own unit of time', () => {
    const { seconds } = timeUnitOf(pumping.curve);
    const { points = [] } = pressureChart(pumping, [{ time: 600, pressure: 100 }], METRIC);
    expect(points[0]?.x[0]).toBe(600 / seconds);
    expect(points[0]?.y[0]).toBeCloseTo(1, 12);
  });

  test('shares of the loads make up all gas at every time', () => {
    const { series } = loadsChart(pumping);
    const count = series[0]!.y.length;
    // loads below a thousandth at all times are left out
    const LEFT_OUT = 0.5;
    for (let i = 0; i < count; i += 17) {
      const sum = series.reduce((total, { y }) => total + y[i]!, 0);
      expect(Math.abs(sum - 100)).toBeLessThan(LEFT_OUT);
    }
  });
});

describe('go or no-go', () => {
  test('a pressure that the pumps never reach is no-go, and says what keeps it up', () => {
    const leaky = withValue(WITH_SYSTEM, ['vacuum', 'system', 'leak'], '100 mbar l/s') as DesignFile;
    const state = stateOf(opened(leaky));
    expect(goVerdict(state, METRIC)).toMatchObject({ level: 'bad', second: 'The pumps never reach 10⁻⁵ mbar.' });
    expect(goItems(state, METRIC).some(({ answer }) => /the leak lets in 100 mbar l\/s/i.test(answer))).toBe(true);
  });

  test('good vacuum is good enough; nothing to evaporate is told', () => {
    const good = withValue(BARE, ['vacuum', 'pressure'], '1e-7 mbar') as DesignFile;
    expect(goVerdict(stateOf(opened(good)), METRIC)).toMatchObject({ level: 'good' });
    const idle = withValue(BARE, ['filaments'], []) as DesignFile;
    expect(goVerdict(stateOf(opened(idle)), METRIC).sentence).toMatch(/No filament evaporates/);
  });

  test('the worse the vacuum, the worse the verdict', () => {
    const levels = ['1e-7 mbar', '1e-5 mbar', '1e-4 mbar'].map((pressure) =>
      goVerdict(stateOf(opened(withValue(BARE, ['vacuum', 'pressure'], pressure) as DesignFile)), METRIC),
    );
    expect(levels.map(({ level }) => level)).toEqual(['good', 'caution', 'bad']);
  });
});

describe('the form of a pumping system', () => {
  const system = fieldsOf(FORMS.vacuum).find(({ key }) => key === 'system');
  const listOf = (fields: readonly Field[], key: string): Extract<Field, { kind: 'list' }> => {
    const field = fields.find((one) => one.key === key);
    if (field?.kind !== 'list') throw new Error(`${key}: expected a list`);
    return field;
  };
  const pumps = listOf(fieldsOf(system), 'pumps');
  const line = listOf(fieldsOf(pumps.item), 'line');

  test('another pump, another part of a line, another surface and a speed curve are sound', () => {
    const surfaces = listOf(fieldsOf(system), 'surfaces');
    const curve = listOf(fieldsOf(pumps.item), 'curve');
    const morePumps = withNextItem(pumps, STARTING_SYSTEM.pumps) as (typeof STARTING_SYSTEM)['pumps'];
    expect(morePumps.at(-1)?.name).toBe('diffusion pump 2');
    const rows = withNextItem(curve, withNextItem(curve, []));
    const changed = [
      [['pumps'], morePumps],
      [['pumps', 0, 'line'], withNextItem(line, [])],
      [['pumps', 0, 'curve'], rows],
      [['surfaces'], withNextItem(surfaces, STARTING_SYSTEM.surfaces ?? [])],
      [['coldTrap'], startOf(fieldsOf(system).find(({ key }) => key === 'coldTrap')!)],
    ] as const;
    for (const [path, value] of changed)
      expect(openPlantFile(withValue(WITH_SYSTEM, ['vacuum', 'system', ...path], value)).ok).toBe(true);
  });

  test('a part of a line becomes any other kind, keeps its diameter, and is sound', () => {
    if (line.item.kind !== 'choice') throw new Error('expected a choice');
    const old = { part: 'tube', diameter: '123 mm', length: '2 m' };
    for (const word of line.item.options.keys()) {
      const next = asKind(line.item, word, old);
      expect(next).toMatchObject({ part: word, diameter: '123 mm' });
      expect(openPlantFile(withValue(WITH_SYSTEM, ['vacuum', 'system', 'pumps', 0, 'line', 0], next)).ok).toBe(true);
    }
  });
});
