import { beforeAll, describe, expect, test } from 'vitest';
import { createLocalRunner } from '../../engine/gas/scatter.ts';
import {
  createEvaluator,
  formatProblem,
  openPlantFile,
  type Coat,
  type DesignFile,
  type Evaluator,
} from '../../engine/index.ts';
import { presets } from '../../presets/index.ts';
import { withValue } from '../../viewer/state/edits/path.ts';
import { contaminationCase } from '../../engine/vacuum/contaminationCase.ts';
import { shotInGas } from '../../viewer/stages/vacuum/scattering/shotInGas.ts';
import { sweepRow } from '../../viewer/stages/vacuum/scattering/sweepRow.ts';

const POINTS = 500;
const ROUNDING = 1e-12; // exp and division, twice
/** Few points are enough to tell one coat from another. */
const whole = createEvaluator();
const COARSE: Evaluator = {
  evaluate: async (plant, options, control) => whole.evaluate(plant, { ...options, points: POINTS }, control),
};

const freely = (): void => {};

async function coatOf(file: unknown): Promise<Coat> {
  const result = openPlantFile(file);
  if (!result.ok) throw new Error(result.problems.map(formatProblem).join('\n'));
  return COARSE.evaluate(result.plant, { rays: 0 });
}

describe('a coat through gas', () => {
  let coat: Coat;
  beforeAll(async () => {
    coat = await coatOf(presets[0]!.file);
  });
  const laid = async (pressure: number, seed = 1) =>
    shotInGas(
      coat,
      { pressure, wantedError: 0.2, mostAtoms: 16_384, seed, evaluator: COARSE, run: createLocalRunner() },
      { step: freely },
    );

  test('in a very good vacuum it is the coat in vacuum, within its errors', async () => {
    const { inGas } = await laid(1e-8);
    const { mean } = inGas.statistics;
    // a path of some 1e6 m scatters 1e-6 of the vapour, and what the counts cannot exclude is in the error
    expect(Math.abs(mean.value / coat.statistics.mean.value - 1)).toBeLessThan(1e-5);
  });

  test('mirror and elsewhere make up all vapour; more pressure leaves less that flies straight', async () => {
    const rows = [sweepRow(await laid(1e-4)), sweepRow(await laid(1e-2))];
    for (const { straight, scattered, lost } of rows)
      expect(straight.value + scattered.value + lost.value).toBeCloseTo(1, 12);
    expect(rows[1]!.straight.value).toBeLessThan(rows[0]!.straight.value);
    expect(rows[1]!.scattered.value).toBeGreaterThan(rows[0]!.scattered.value);
  });

  test('the same seed gives the same coat, another seed another one', async () => {
    const [first, again, other] = [await laid(1e-3), await laid(1e-3), await laid(1e-3, 2)];
    expect(again.inGas.thickness).toEqual(first.inGas.thickness);
    expect(other.inGas.thickness).not.toEqual(first.inGas.thickness);
  });

  test('ended by its control, it rejects', async () => {
    const step = (): void => {
      throw new Error('ended');
    };
    const options = { wantedError: 0.001, mostAtoms: 1e9, seed: 1, evaluator: COARSE, run: createLocalRunner() };
    const run = shotInGas(coat, options, { step });
    await expect(run).rejects.toThrow('ended');
  });
});

describe('gas in the film', () => {
  test('thin places take in as much gas as thick ones, and more for each atom', async () => {
    const coat = await coatOf(presets[0]!.file);
    const film = contaminationCase(coat, 60)!;
    const perAtom = coat.thickness.map((thickness, i) => film.map[i]! * thickness);
    for (const value of perAtom) expect(Math.abs(value / perAtom[0]! - 1)).toBeLessThan(ROUNDING);
    expect(film.worst).toBeGreaterThan(film.mean);
  });

  test('a shot twice as long takes in twice as much; the design says how long it is', async () => {
    const coat = await coatOf(presets[0]!.file);
    const [short, long] = [contaminationCase(coat, 60)!, contaminationCase(coat, 120)!];
    expect(long.worst / short.worst).toBeCloseTo(2, 12);
    const file = withValue(presets[0]!.file, ['firing'], { duration: '2 min' }) as DesignFile;
    expect(contaminationCase(await coatOf(file))!.worst).toBe(long.worst);
    expect(contaminationCase(coat)!.worst).toBe(short.worst);
  });

  test('a mirror with bare places has no ratio', async () => {
    const file = withValue(presets[0]!.file, ['filaments'], []) as DesignFile;
    expect(contaminationCase(await coatOf(file), 60)).toBeNull();
  });
});
