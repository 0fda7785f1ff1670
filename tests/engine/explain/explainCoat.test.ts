import { beforeAll, describe, expect, test } from 'vitest';
import { caseOf, isEven, type CoatCase } from '../../../engine/explain/coatCase.ts';
import { explainCoat, type Explanation } from '../../../engine/explain/explainCoat.ts';
import { thicknessOf, type Statement } from '../../../engine/explain/story.ts';
import { filmReport } from '../../../engine/film/filmReport.ts';
import { createEvaluator, createProbe, openPlantFile, type Coat, type Plant } from '../../../engine/index.ts';
import { presets } from '../../../presets/index.ts';
import { CASES, coatOfDesign } from './cases.ts';

/** A zone against the map's nodes, as in reading.test.ts. */
const AGAINST_MAP = 1e-3;
/** Kernel against reference law of emission, see reading.test.ts. */
const AGAINST_KERNELS = 1e-7;
const ROUNDING = 1e-12;

const kinds = Object.keys(CASES) as CoatCase[];
const explained = new Map<string, Explanation>();
const evaluator = createEvaluator();
const coatOfPreset = async (id: string): Promise<Coat> => {
  const opened = openPlantFile(presets.find((preset) => preset.id === id)!.file);
  if (!opened.ok) throw new Error(id);
  return evaluator.evaluate(opened.plant, { points: 4000, rays: 0 });
};
const get = (name: string): Explanation => explained.get(name)!;

beforeAll(async () => {
  for (const kind of kinds) explained.set(kind, await explainCoat(await coatOfDesign(CASES[kind])));
  const [asWired, secondRing] = [await coatOfPreset('tarn-hill-as-wired'), await coatOfPreset('tarn-hill-second-ring')];
  const options = [{ name: 'with a second ring', coat: secondRing }];
  explained.set('as wired', await explainCoat(asWired, { options, freePath: 5 }));
  explained.set('second ring', await explainCoat(secondRing));
  explained.set('shadows', await explainCoat(await coatOfPreset('spider-shadow')));
  explained.set('crucibles', await explainCoat(await coatOfPreset('crucibles-8m')));
});

const statements = ({ why, cost, options, sure }: Explanation): Statement[] => [...why, ...cost, ...options, ...sure];
const topic = (list: readonly Statement[], start: string): Statement =>
  list.find((statement) => statement.topic.startsWith(start))!;

describe('the question', () => {
  test.each(kinds)('of a coat made %s is that', (kind) => {
    expect(get(kind).found.kind).toBe(kind);
    expect(get(kind).question).toMatch(/\?$/);
  });

  test('is another for a bad coat than for an even one', () => {
    expect(get('as wired').question).toBe('Why is the middle thin?');
    expect(get('second ring').question).toBe('Is this coat even enough?');
    expect(get('second ring').answer).toMatch(/^Yes\. Thinnest 99 nm, at the outer edge: 1\.0 % below the average/);
    expect(get('shadows').question).toBe('Why is there a thin patch?');
    expect(get('crucibles').question).toBe('Why is one place thin?');
  });

  test('compares the place in question with one on the other side of the average', () => {
    for (const kind of kinds.filter((name) => !isEven(name) && name !== 'bare')) {
      const { found, decomposition } = get(kind);
      expect(Math.sign(decomposition!.difference), kind).toBe(found.kind.startsWith('thin') ? -1 : 1);
    }
  });
});

describe('every statement', () => {
  test('carries a figure in each of its sentences, and no number that is none', () => {
    for (const [name, explanation] of explained)
      for (const { claim, figures } of statements(explanation)) {
        for (const sentence of claim.split(/(?<=[.?!]) (?=[A-Z“])/))
          expect(sentence, `${name}: ${claim}`).toMatch(/\d/);
        expect(claim, name).not.toMatch(/NaN|Infinity|undefined|null/);
        expect(Object.values(figures).length, `${name}: ${claim}`).toBeGreaterThan(0);
      }
  });

  test('is short enough to be read at once', () => {
    for (const explanation of explained.values())
      for (const { claim } of statements(explanation)) expect(claim.split(' ').length, claim).toBeLessThanOrEqual(60);
  });
});

describe('the answer and its reasons', () => {
  test('name thickness and share of the two places as the map has them', () => {
    const { coat, decomposition, answer } = get('as wired');
    const { mean, radius } = coat.profile;
    const [here, there] = [decomposition!.to, decomposition!.from].map(({ deposit }) => thicknessOf(coat, deposit));
    // the zones are 2 % of the radius wide, the profile's ends are their borders: a tenth of the spread across
    expect(Math.abs(here! / mean[0]! - 1)).toBeLessThan(0.01);
    expect(Math.abs(there! / (coat.statistics.edgeRatio.value * coat.statistics.mean.value) - 1)).toBeLessThan(
      AGAINST_MAP,
    );
    expect(radius.length).toBe(mean.length);
    expect(answer).toContain(`${(100 * (1 - here! / there!)).toFixed(0)} % less`);
  });

  test('tell what an idle filament would add: exactly what it adds when it is fired', async () => {
    const { coat, why, found } = get('thin side');
    const fired: Plant = { ...coat.plant, filaments: coat.plant.filaments.map((one) => ({ ...one, outOfUse: false })) };
    const [x, y] = coat.statistics.minimum.position;
    const [before, after] = [(await createProbe(coat.plant))(x, y), (await createProbe(fired))(x, y)];
    const { figures } = topic(why, 'Filaments out of use');
    expect(figures['idle']).toBe(1);
    expect(found.to.angle).not.toBeNull();
    expect(Math.abs(figures['added']! / (after!.thickness - before!.thickness) - 1)).toBeLessThan(AGAINST_KERNELS);
  });

  test('name what casts the shadow, and how much of it', () => {
    const { claim, figures, tone } = topic(get('thin patch').why, 'Shadow');
    expect(claim).toContain('“lid” stops 100 %');
    expect(figures['blocked1']).toBe(1);
    expect(tone).toBe('bad');
    expect(topic(get('shadows').why, 'Shadow').claim).toMatch(/“vane \d” stops 15 % and “vane \d” stops 14 %/);
  });

  // Lambert-Beer over the mean way, which differs from the mean over ways by half their variance over λ²
  test('tell how much vapour meets gas, and that the coat leaves it out', () => {
    const { why, sure, decomposition, hasGas } = get('as wired');
    const { meeting, meetingFrom, ratio } = topic(why, 'Gas').figures;
    expect(Math.abs(meeting! - (1 - Math.exp(-decomposition!.to.meanDistance / 5)))).toBeLessThan(0.01);
    expect(ratio).toBe((1 - meeting!) / (1 - meetingFrom!));
    expect(hasGas).toBe(false);
    expect(decomposition!.factors.find(({ factor }) => factor === 'gas')!.deposit).toBe(0);
    expect(topic(sure, 'Left out').claim).toContain('collisions with gas');
  });

  test('take the free path from the vacuum of the plant, and say nothing of gas where there is none', async () => {
    const { coat, why } = get('second ring');
    // λ falls as the pressure rises
    const { freePath } = topic(why, 'Gas').figures;
    const at = async (pressure: number): Promise<Statement | undefined> => {
      const plant = { ...coat.plant, vacuum: { ...coat.plant.vacuum, pressure } };
      return topic((await explainCoat({ ...coat, plant })).why, 'Gas');
    };
    const { pressure } = coat.plant.vacuum;
    expect(Math.abs(((await at(pressure / 10))!.figures['freePath'] ?? 0) / freePath! / 10 - 1)).toBeLessThan(ROUNDING);
    expect(await at(0)).toBeUndefined();
  });

  test('count gas among the factors of a coat that was worked out with it', async () => {
    const { coat } = get('as wired');
    const { decomposition, sure } = await explainCoat(coat, { freePath: 5, hasGas: true });
    const gas = decomposition!.factors.find(({ factor }) => factor === 'gas')!;
    expect(gas.share).toBeLessThan(-0.01);
    const sum = decomposition!.factors.reduce((all, { deposit }) => all + deposit, 0);
    expect(Math.abs(sum / decomposition!.difference - 1)).toBeLessThan(ROUNDING);
    expect(topic(sure, 'Left out').claim).not.toContain('collisions with gas');
  });
});

describe('the cost', () => {
  test('has the numbers of the film report', () => {
    const { coat, cost } = get('as wired');
    const report = filmReport(coat);
    expect(topic(cost, 'Light').figures['reflectance']).toBe(report.reflectance.value);
    expect(topic(cost, 'Sharpness').figures['bump']).toBe(report.figure.asCoated.wavefront.peakToValley.value);
    expect(topic(cost, 'No lamp').figures['opaqueFrom']).toBe(report.opaque[0]!.thickness);
  });

  test('of thickness is next to nothing where the coat is opaque, and most of the light where there is none', () => {
    expect(topic(get('as wired').cost, 'Light').figures['lostByThickness']).toBeLessThan(1e-4);
    expect(topic(get('bare').cost, 'Light').figures['lostByThickness']).toBeGreaterThan(0.9);
    expect(topic(get('thin all over').cost, 'Light').tone).toBe('bad');
  });

  test('says inside or outside the limits as the statistics do', () => {
    for (const [name, { coat, cost }] of explained) {
      const inside = topic(cost, 'Inside the limits');
      if (coat.statistics.mean.value > 0)
        expect(inside !== undefined, name).toBe(coat.statistics.fractionInside.value > 0.9995);
    }
  });

  test('is told as a problem where the film has no index at its wavelength', async () => {
    const { coat } = get('even');
    const film = { ...coat.plant.film, substrate: 'glass ceramic' as const, wavelength: 0.3e-6 };
    const { cost, consequence } = await explainCoat({ ...coat, plant: { ...coat.plant, film } });
    expect(consequence).toHaveProperty('problem');
    expect(topic(cost, 'Light').claim).toMatch(/^Reflectance could not be worked out: film\.wavelength: expected/);
    expect(cost.map((statement) => statement.topic)).toEqual(['Thick enough?', 'Inside the limits', 'Light']);
  });
});

describe('the options', () => {
  test('tell the other coat as it was evaluated', async () => {
    const { effects, options } = get('as wired');
    const { statistics, budget } = await coatOfPreset('tarn-hill-second-ring');
    expect(effects).toHaveLength(2);
    expect(effects[1]).toMatchObject({
      thinnest: statistics.minimum.value,
      uniformity: statistics.uniformity.value,
      evaporated: budget.evaporated,
      filaments: 48,
    });
    expect(options[0]).toMatchObject({ topic: 'with a second ring', tone: 'good' });
  });

  test('tell what more aluminium alone would do: exactly what it does', async () => {
    const { coat, options } = get('thin edge');
    const { factor, thinnest, thickest } = topic(options, 'Only hang more').figures;
    const filaments = coat.plant.filaments.map((one) => ({ ...one, charge: factor! * one.charge }));
    const more = await evaluator.evaluate({ ...coat.plant, filaments }, { points: 2000, rays: 0 });
    expect(Math.abs(more.statistics.minimum.value / thinnest! - 1)).toBeLessThan(ROUNDING);
    expect(Math.abs(more.statistics.maximum.value / thickest! - 1)).toBeLessThan(ROUNDING);
    expect(Math.abs(thinnest! / (coat.plant.film.target * (1 - coat.plant.film.tolerance)) - 1)).toBeLessThan(ROUNDING);
  });

  test('bring an even coat that is off its target back to it', async () => {
    for (const kind of ['thin all over', 'thick all over'] as const) {
      const { coat, options } = get(kind);
      const { mean } = options[0]!.figures;
      expect(Math.abs(mean! / coat.plant.film.target - 1)).toBeLessThan(ROUNDING);
    }
  });
});

describe('the doubts', () => {
  test('weigh the law of emission by the coat that another law would lay', async () => {
    const { coat, sure } = get('as wired');
    const filaments = coat.plant.filaments.map((one) => ({
      ...one,
      source: { ...one.source, law: { kind: 'isotropic' } as const },
    }));
    const even = await evaluator.evaluate({ ...coat.plant, filaments }, { points: 4000, rays: 0 });
    const edge = even.statistics.edgeRatio.value * even.statistics.mean.value;
    const { ifEven } = topic(sure, 'Direction of departure').figures;
    expect(Math.abs(even.profile.mean[0]! / edge - 1 - ifEven!)).toBeLessThan(0.005); // the zone's width, as above
  });

  test('give the numerical errors of the statistics', () => {
    const { coat, sure } = get('shadows');
    expect(topic(sure, 'Numbers').figures).toMatchObject({
      mean: coat.statistics.mean.error,
      thinnest: coat.statistics.minimum.error,
    });
  });
});

describe('the lines of sight', () => {
  // the parabola's sag is r²/2R: edge 1.3²/23.92 m, hole 0.275²/23.92 m; the ring has radius 1.45 m at 0.9 m
  test('of the ring as wired have the lengths of plane geometry', () => {
    const { lines } = get('as wired').sight;
    const expected = [0.275, 1.3].map((r) => Math.hypot(1.45 - r, 0.9 - r ** 2 / 23.92));
    lines.forEach(({ length, state }, i) => {
      expect(Math.abs(length - expected[i]!)).toBeLessThan(ROUNDING);
      expect(state).toBe('clear');
    });
    expect(lines).toHaveLength(2);
  });

  test('show the idle filament, and the one whose vapour is stopped', () => {
    expect(get('thin side').sight.lines.map(({ state }) => state)).toEqual(['clear', 'idle']);
    expect(get('shadows').sight.lines.map(({ state }) => state)).toEqual(['clear', 'hidden']);
    expect(get('bare').sight.lines).toEqual([]);
  });
});

test('the same coat raises the same case and the same words', async () => {
  const { coat, answer, found } = get('thin middle');
  expect(caseOf(coat).kind).toBe(found.kind);
  expect((await explainCoat(coat)).answer).toBe(answer);
});
