import fc from 'fast-check';
import { expect, test } from 'vitest';
import { createEvaluator, createProbe, type Coat, type Plant } from '../../engine/index.ts';
import { evaporatedMasses } from '../../engine/plant/plant.ts';
import { anyPlant, designOf, validPlant, type AnyPlant } from '../support/anyPlant.ts';
import { relativeError } from '../support/plants.ts';

/** Few points and rays: the laws hold at any number, with errors that say so. */
const QUICK = { points: 2000, rays: 2 ** 14 };
const evaluate = (plant: Plant): Promise<Coat> => createEvaluator().evaluate(plant, QUICK);

/** Every number in a value, by its path. */
function numbersOf(value: unknown, path = ''): [string, number][] {
  if (typeof value === 'number') return [[path, value]];
  if (ArrayBuffer.isView(value))
    return Array.from(value as unknown as ArrayLike<number>, (one, i) => [`${path}[${i}]`, one]);
  if (typeof value !== 'object' || value === null) return [];
  return Object.entries(value).flatMap(([key, one]) => numbersOf(one, `${path}.${key}`));
}

/** Runs an asynchronous law over valid plants of a fixed seed. */
async function forPlants(
  seed: number,
  count: number,
  law: (plant: Plant, any: AnyPlant) => Promise<void>,
  plants = anyPlant,
): Promise<void> {
  await fc.assert(
    fc.asyncProperty(plants, async (any) => {
      const plant = validPlant(designOf(any));
      fc.pre(plant !== undefined);
      await law(plant, any);
    }),
    { seed, numRuns: count, endOnFailure: true },
  );
}

test('the mass of 200 plants of every kind closes within its stated error, and every number is sound', async () => {
  await forPlants(1952, 200, async (plant) => {
    const coat = await evaluate(plant);
    const { closure, items, evaporated } = coat.budget;
    for (const [path, value] of numbersOf([
      coat.thickness,
      coat.witnessThickness,
      coat.statistics,
      coat.budget,
      coat.profile,
    ]))
      expect(Number.isFinite(value), path).toBe(true);
    for (const value of coat.thickness) expect(value).toBeGreaterThanOrEqual(0);
    for (const value of coat.witnessThickness) expect(value).toBeGreaterThanOrEqual(0);
    for (const { name, mass } of items) expect(mass.value, name).toBeGreaterThanOrEqual(-mass.error);
    expect(coat.statistics.minimum.value).toBeLessThanOrEqual(coat.statistics.maximum.value);
    expect(
      relativeError(evaporated, evaporatedMasses(plant).reduce((sum, mass) => sum + mass, 0) || 1),
    ).toBeLessThanOrEqual(evaporated > 0 ? 1e-12 : 1);
    expect(Math.abs(closure!.value)).toBeLessThanOrEqual(closure!.error);
  });
});

/** Places that a probe looks at, in units of the glass's radius, off its middle. */
const LOOKS = Array.from({ length: 24 }, (_, k) => [0.97 * Math.sqrt((k + 0.5) / 24), 2.4 * k] as const);
/** Turning by an angle rounds every coordinate; distances of a tenth of the mirror and steep laws amplify it. */
const TURNED = 1e-9;

test('turning a plant about its axis turns its coat', async () => {
  let compared = 0;
  await forPlants(
    1953,
    60,
    async (plant, any) => {
      const turn = 0.7;
      const turnedPlant = validPlant(designOf(any, turn));
      expect(turnedPlant).toBeDefined();
      const [probe, turnedProbe] = [await createProbe(plant), await createProbe(turnedPlant!)];
      const scale = Math.max(
        ...LOOKS.map(
          ([r, angle]) =>
            probe(r * plant.shape.rimRadius * Math.cos(angle), r * plant.shape.rimRadius * Math.sin(angle))
              ?.thickness ?? 0,
        ),
      );
      for (const [r, angle] of LOOKS) {
        const at = r * plant.shape.rimRadius;
        const before = probe(at * Math.cos(angle), at * Math.sin(angle));
        const after = turnedProbe(at * Math.cos(angle + turn), at * Math.sin(angle + turn));
        expect(after === null).toBe(before === null);
        if (!before || !after) continue;
        compared++;
        expect(Math.abs(after.thickness - before.thickness)).toBeLessThanOrEqual(TURNED * scale);
      }
    },
    anyPlant.filter(({ centerX }) => centerX === 0),
  );
  expect(compared).toBeGreaterThan(800);
});

test('doubling a charge doubles that filament’s share and no other', async () => {
  await forPlants(1954, 30, async (plant) => {
    const chosen = plant.filaments.length - 1;
    const doubled: Plant = {
      ...plant,
      filaments: plant.filaments.map((filament, f) =>
        f === chosen ? { ...filament, charge: 2 * filament.charge } : filament,
      ),
    };
    const evaluator = createEvaluator();
    const [one, two] = [await evaluator.evaluate(plant, QUICK), await evaluator.evaluate(doubled, QUICK)];
    const alone = await evaluator.evaluate(
      {
        ...plant,
        filaments: plant.filaments.map((filament, f) => (f === chosen ? filament : { ...filament, charge: 0 })),
      },
      QUICK,
    );
    expect(two.face.points.count).toBe(one.face.points.count);
    const greatest = Math.max(...two.thickness);
    one.thickness.forEach((value, i) => {
      expect(Math.abs(two.thickness[i]! - value - alone.thickness[i]!)).toBeLessThanOrEqual(1e-14 * greatest); // rounding of two sums
    });
  });
});

test('the coat of a plant is the same whether its filaments stand in one set or in two', async () => {
  await forPlants(
    1955,
    20,
    async (plant, any) => {
      const split = validPlant(designOf({ ...any, sets: any.sets.flatMap(halves) }))!;
      expect(split.filaments).toHaveLength(plant.filaments.length);
      const [one, two] = [await evaluate(plant), await evaluate(split)];
      expect(two.thickness).toEqual(one.thickness); // bit by bit: the same sums in the same order
      expect(two.statistics).toEqual(one.statistics);
      expect(two.budget).toEqual(one.budget);
    },
    anyPlant.filter(({ sets }) => sets.some((set) => set.kind === 'list' && set.filaments.length > 1)),
  );
});

/** A list of filaments as two lists; other sets as they are. */
function halves(set: AnyPlant['sets'][number]): AnyPlant['sets'][number][] {
  if (set.kind !== 'list' || set.filaments.length < 2) return [set];
  const middle = set.filaments.length >> 1;
  return [
    { ...set, filaments: set.filaments.slice(0, middle) },
    { ...set, filaments: set.filaments.slice(middle) },
  ];
}
