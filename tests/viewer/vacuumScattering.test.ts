import { beforeAll, describe, expect, test } from 'vitest';
import { DEFAULT_VAPOUR, perFreePath } from '../../engine/gas/freePath.ts';
import { throwOf } from '../../engine/gas/gasReport.ts';
import { createLocalRunner } from '../../engine/gas/scatter.ts';
import { createEvaluator, formatProblem, openPlantFile, type Coat, type DesignFile } from '../../engine/index.ts';
import { presets } from '../../presets/index.ts';
import { withValue } from '../../viewer/state/edits/path.ts';
import { contaminationCase, firingDuration } from '../../viewer/stages/vacuum/contamination/contaminationCase.ts';
import { residualGas } from '../../viewer/stages/vacuum/gas/residualGas.ts';
import { gasCoat } from '../../viewer/stages/vacuum/scattering/gasCoat.ts';
import { straightPart } from '../../viewer/stages/vacuum/scattering/straightPart.ts';
import { sweepRow } from '../../viewer/stages/vacuum/scattering/sweepRow.ts';

const POINTS = 500;
const ROUNDING = 1e-12; // exp and division, twice
const freely = (): void => {};

/** One small source above a disc, at a pressure where paths are about as long as the throw. */
const SINGLE: DesignFile = {
  format: 'evenfall',
  version: 1,
  name: 'one source',
  mirror: { radiusOfCurvature: '4 m', outerDiameter: '1 m' },
  tank: { diameter: '1.6 m', depth: '1.5 m' },
  filamentTypes: { spot: { loops: 1, length: '10 mm', charge: '1 g', emission: { law: 'isotropic' } } },
  filaments: [
    { arrangement: 'list', name: 'spot', type: 'spot', filaments: [{ position: ['0.1 m', '0 m', '0.8 m'] }] },
  ],
  vacuum: { pressure: '1e-4 mbar' },
};

async function coatOf(file: unknown): Promise<Coat> {
  const result = openPlantFile(file);
  if (!result.ok) throw new Error(result.problems.map(formatProblem).join('\n'));
  return createEvaluator().evaluate(result.plant, { points: POINTS, rays: 0 });
}

describe('the part that arrives without a collision', () => {
  test('of one source it is the coat in vacuum times e^(−r/λ), at every point', async () => {
    const coat = await coatOf(SINGLE);
    const { plant, face } = coat;
    const gas = residualGas(plant.vacuum);
    const straight = await straightPart(coat, gas, freely);
    const inverse = perFreePath(gas, DEFAULT_VAPOUR, throwOf(plant).mean);
    const { position: p } = face.points;
    const s = plant.filaments[0]!.source.position;
    for (let i = 0; i < face.points.count; i++) {
      const r = Math.hypot(p[3 * i]! - s[0]!, p[3 * i + 1]! - s[1]!, p[3 * i + 2]! - s[2]!);
      const expected = coat.thickness[i]! * plant.film.density * Math.exp(-r * inverse);
      expect(Math.abs(straight[i]! / expected - 1)).toBeLessThan(ROUNDING);
    }
  });
});

describe('a coat through gas', () => {
  let coat: Coat;
  beforeAll(async () => {
    coat = await coatOf(presets[0]!.file);
  });
  const laid = async (pressure: number, seed = 1) =>
    gasCoat(coat, {
      pressure,
      wantedError: 0.2,
      mostAtoms: 16_384,
      seed,
      run: createLocalRunner(),
      control: { step: freely },
    });

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
    const run = gasCoat(coat, {
      wantedError: 0.001,
      mostAtoms: 1e9,
      seed: 1,
      run: createLocalRunner(),
      control: {
        step: () => {
          throw new Error('ended');
        },
      },
    });
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
    expect(firingDuration(file)).toBe(120);
    expect(firingDuration(withValue(file, ['firing'], undefined) as DesignFile)).toBe(60);
  });

  test('a mirror with bare places has no ratio', async () => {
    const file = withValue(presets[0]!.file, ['filaments'], []) as DesignFile;
    expect(contaminationCase(await coatOf(file), 60)).toBeNull();
  });
});
