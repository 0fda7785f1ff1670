/** Edits of a plant: what they keep, what they undo, and what they refuse. */
import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { openPlantFile, parseQuantity, type DesignFile, type NamedFiles, type Plant } from '../../engine/index.ts';
import { presets } from '../../presets/index.ts';
import { addMesh, addPart, type AddedKind } from '../../viewer/state/edits/addPart.ts';
import { base64Of } from '../../viewer/state/edits/base64.ts';
import {
  withArrangement,
  emissionOfLaw,
  withPath,
  withShape,
  withWitnessPlace,
} from '../../viewer/state/edits/changeKind.ts';
import { duplicatePart } from '../../viewer/state/edits/duplicatePart.ts';
import { movePart, setRing } from '../../viewer/state/edits/movePart.ts';
import { withOutOfUse, withOwnCharge } from '../../viewer/state/edits/ownValues.ts';
import { freeName, type Edited, type Present } from '../../viewer/state/edits/parts.ts';
import { valueAt, withValue } from '../../viewer/state/edits/path.ts';
import { removeParts } from '../../viewer/state/edits/removeParts.ts';
import { renamePart } from '../../viewer/state/edits/renamePart.ts';
import { withNewTable, withTable } from '../../viewer/state/edits/replaceTable.ts';
import { withField } from '../../viewer/state/edits/setField.ts';
import { asSingleFilaments } from '../../viewer/state/edits/singleFilaments.ts';
import { filamentTableText } from '../../viewer/state/edits/tableText.ts';
import type { Part } from '../../viewer/state/selection.ts';
import { anyPlant, designOf, validPlant } from '../support/anyPlant.ts';
import { cubeStl } from '../support/stl.ts';

const SEED = 20260;
/** Nearer than this, two places are the same, m: a thousandth of an atom. */
const SAME_PLACE = 1e-12;
/** Rounding of a charge that was written in another unit: a few units in the last place. */
const SAME_CHARGE = 1e-14;
/** Rounding of unit vectors written with 15 decimals. */
const SAME_DIRECTION = 2e-15;
/** Rounding of the ends of an obstacle, 1e-13 m, over the shortest, 20 mm, turns its axis by less than this. */
const SAME_SOLID = 1e-11;
/** Positions of witnesses are written to a tenth of a millimetre; on the mirror, to a tenth of a degree at 1.5 m. */
const POSITION_WRITTEN = 1e-4;
const ANGLE_WRITTEN = 3e-3;

function opened(file: unknown, files?: NamedFiles): Plant {
  const result = openPlantFile(file, files);
  if (!result.ok) throw new Error(result.problems.map(({ path, message }) => `${path}: ${message}`).join('\n'));
  return result.plant;
}

function presentOf(file: DesignFile): Present {
  return { file, files: new Map(), plant: opened(file) };
}

function made(edit: Edited): DesignFile {
  if (!edit.ok) throw new Error(edit.reason);
  return edit.file;
}

function expectNear(actual: readonly number[], expected: readonly number[], tolerance: number): void {
  actual.forEach((value, k) => expect(Math.abs(value - (expected[k] ?? NaN))).toBeLessThanOrEqual(tolerance));
}

/** Places, axes, charges, names, feeds and use of two plants are the same. */
function expectSameFilaments(actual: Plant, expected: Plant): void {
  const told = (plant: Plant) =>
    plant.filaments.map(({ name, set, number, feed, outOfUse }) => ({ name, set, number, feed, outOfUse }));
  expect(told(actual)).toEqual(told(expected));
  actual.filaments.forEach((filament, i) => {
    const other = expected.filaments[i]!;
    expectNear(filament.center, other.center, SAME_PLACE);
    expectNear(filament.coilAxis, other.coilAxis, SAME_DIRECTION);
    expectNear([...filament.source.position], [...other.source.position], SAME_PLACE);
    expect(Math.abs(filament.charge - other.charge)).toBeLessThanOrEqual(SAME_CHARGE * other.charge);
  });
}

/** Valid designs of every kind, with feeds and exceptions. */
const anyFile: fc.Arbitrary<DesignFile> = fc
  .tuple(anyPlant, fc.boolean(), fc.boolean())
  .map(([plant, hasFeeds, hasExceptions]) => {
    const design = designOf(plant) as unknown as DesignFile;
    const filaments = design.filaments.map((set) => ({
      ...set,
      ...(hasFeeds && { feeds: 1 }),
      ...(hasExceptions && { exceptions: [{ filament: 1, charge: '31 mg', outOfUse: true }] }),
    }));
    return { ...design, filaments } as DesignFile;
  })
  .filter((file) => validPlant(file as unknown as Readonly<Record<string, unknown>>) !== undefined);

/** The design with a type that emits by another law. */
function withLaw(file: DesignFile, name: string, law: Parameters<typeof emissionOfLaw>[1]): DesignFile {
  return withValue(file, ['filamentTypes', name, 'emission'], emissionOfLaw(file.filamentTypes[name]!.emission, law));
}

/** Every part of a plant that can be duplicated and deleted again. */
function ownParts(file: DesignFile): Part[] {
  return [
    ...Object.keys(file.filamentTypes).map((name): Part => ({ kind: 'type', name })),
    ...file.filaments.map((_, index): Part => ({ kind: 'set', index })),
    ...(file.obstacles ?? []).map((_, index): Part => ({ kind: 'obstacle', index })),
    ...(file.witnesses ?? []).map((_, index): Part => ({ kind: 'witness', index })),
    ...file.filaments.flatMap((set, i): Part[] =>
      set.arrangement === 'list' && set.filaments
        ? set.filaments.map((_, k) => ({ kind: 'filament', set: i, number: k + 1 }))
        : [],
    ),
  ];
}

const everyFile = (law: (file: DesignFile) => void): void =>
  fc.assert(fc.property(anyFile, law), { seed: SEED, numRuns: 60 });

describe('properties of edits, for any plant', () => {
  test('duplicating a part and deleting the duplicate gives the same file', () => {
    everyFile((file) => {
      for (const part of ownParts(file)) {
        const twin = duplicatePart(file, part);
        if (!twin.ok || !twin.part) throw new Error('expected a duplicate');
        expect(twin.file).not.toEqual(file);
        opened(twin.file);
        expect(JSON.stringify(made(removeParts(twin.file, [twin.part])))).toBe(JSON.stringify(file));
      }
    });
  });

  test('renaming a type keeps the plant', () => {
    everyFile((file) => {
      const { file: renamed } = renamePart(file, { kind: 'type', name: 'a' }, 'tungsten basket') as {
        file: DesignFile;
      };
      expect(Object.keys(renamed.filamentTypes)[0]).toBe('tungsten basket');
      expect(opened(renamed)).toEqual(opened(file));
    });
  });

  test('turning sets into single filaments keeps the plant', () => {
    everyFile((file) => {
      const listed = file.filaments.reduce((next, _, i) => asSingleFilaments(next, i), file);
      expect(listed.filaments.every(({ arrangement }) => arrangement === 'list')).toBe(true);
      expectSameFilaments(opened(listed), opened(file));
    });
  });

  test('moving by +d and then by −d leaves everything in its place', () => {
    const delta = fc.tuple(
      fc.integer({ min: -9, max: 9 }),
      fc.integer({ min: -9, max: 9 }),
      fc.integer({ min: 1, max: 9 }),
    );
    fc.assert(
      fc.property(anyFile, delta, (file, millimetres) => {
        const there = millimetres.map((mm) => mm / 1000) as [number, number, number];
        const back = there.map((v) => -v) as [number, number, number];
        for (const part of ownParts(file)) {
          if (part.kind === 'type') continue;
          const moved = movePart(file, part, there);
          expect(moved).not.toEqual(file);
          // a place on the way that the engine refuses leaves no plant to make single filaments of
          if (!openPlantFile(moved).ok) continue;
          const returned = opened(movePart(moved, part, back));
          const before = opened(file);
          expectSameFilaments(
            { ...returned, filaments: returned.filaments.map((f, i) => ({ ...f, feed: before.filaments[i]!.feed })) },
            before,
          );
          expectNear([...returned.solids.records], [...before.solids.records], SAME_SOLID);
          returned.witnesses.forEach(({ position }, i) =>
            expectNear(position, before.witnesses[i]!.position, SAME_PLACE),
          );
        }
      }),
      { seed: SEED, numRuns: 40 },
    );
  });

  test('filaments marked as out of use and in use again are as before', () => {
    everyFile((file) => {
      const plain = { ...file, filaments: file.filaments.map((set) => withValue(set, ['exceptions'], undefined)) };
      const places = opened(plain).filaments;
      const marked = withOutOfUse(plain, places, true);
      expect(opened(marked).filaments.every(({ outOfUse }) => outOfUse)).toBe(true);
      expect(JSON.stringify(withOutOfUse(marked, places, false))).toBe(JSON.stringify(plain));
    });
  });

  test('a length typed in inches leaves the plant that it had in metres', () => {
    fc.assert(
      fc.property(fc.integer({ min: 8000, max: 11500 }), (tenThousandths) => {
        const file = presets[0]!.file as DesignFile;
        const metres = (tenThousandths / 10000) * 2.9;
        const typed = (text: string): Plant => opened(withField(file, { kind: 'set', index: 0 }, ['diameter'], text));
        const [inInches, inMetres] = [typed(`${metres / 0.0254} in`), typed(`${metres} m`)];
        expectSameFilaments(inInches, inMetres);
      }),
      { seed: SEED, numRuns: 50 },
    );
  });

  test('a set written as a table and read back is the same set', () => {
    everyFile((file) => {
      const before = opened(file);
      const after = file.filaments.reduce(
        (next, _, i) =>
          made(
            withTable(
              next,
              i,
              filamentTableText(
                before.filaments.filter(({ set }) => set === i),
                'mm',
              ),
            ),
          ),
        file,
      );
      const used = before.filaments.map((filament) => ({ ...filament, outOfUse: false }));
      expectSameFilaments(opened(after), { ...before, filaments: used });
    });
  });

  test('a set can take every arrangement, an obstacle every shape, a type every law', () => {
    everyFile((file) => {
      const present = presentOf(file);
      const count = (plant: Plant, iSet: number) => plant.filaments.filter(({ set }) => set === iSet).length;
      file.filaments.forEach((_, i) => {
        for (const arrangement of ['ring', 'line', 'grid', 'list'] as const) {
          const next = withArrangement(present, i, arrangement);
          expect(next.filaments[i]!.arrangement).toBe(arrangement);
          const result = openPlantFile(next);
          if (result.ok) expect(count(result.plant, i)).toBe(count(present.plant, i));
          else expect(result.problems.every(({ message }) => /which is (outside|inside)/.test(message))).toBe(true);
        }
      });
      (file.obstacles ?? []).forEach((_, i) => {
        for (const shape of ['box', 'cylinder', 'tube', 'cone frustum', 'disc', 'annulus', 'sphere'] as const) {
          const next = withShape(file, i, shape);
          expect(next.obstacles![i]!.shape).toBe(shape);
          const result = openPlantFile(next);
          if (!result.ok)
            expect(result.problems.every(({ message }) => /which is inside|inside the tank/.test(message))).toBe(true);
        }
      });
      for (const law of ['isotropic', 'cosine power', 'straight wire', 'open coil', 'table'] as const)
        opened(withLaw(file, 'a', law));
    });
  });
});

describe('added parts', () => {
  test.each(presets.map(({ id, file }) => [id, file as DesignFile] as const))('are sound in %s', (_, file) => {
    for (const kind of ['type', 'set', 'obstacle', 'witness'] as const satisfies readonly AddedKind[]) {
      const added = addPart(presentOf(file), kind);
      opened(added.file);
      expect(made(removeParts(added.file, [added.part]))).toEqual({
        ...file,
        ...(kind === 'obstacle' && { obstacles: file.obstacles ?? [] }),
        ...(kind === 'witness' && { witnesses: file.witnesses ?? [] }),
      });
    }
  });

  test('a second of each goes beside the first, under a name of its own', () => {
    const file = presets[0]!.file as DesignFile;
    for (const kind of ['type', 'set', 'obstacle', 'witness'] as const)
      opened(addPart(presentOf(addPart(presentOf(file), kind).file), kind).file);
    expect(freeName('W 9', ['W 9'])).toBe('W 2');
    expect(freeName('x'.repeat(80), ['x'.repeat(80)])).toHaveLength(80);
  });

  test('a ring is half way between rim and wall, face and end', () => {
    const { file, part } = addPart(presentOf(presets[0]!.file as DesignFile), 'set');
    expect(valueAt(file, ['filaments', part.kind === 'set' ? part.index : -1])).toMatchObject({
      arrangement: 'ring',
      count: 12,
    });
    const plant = opened(file);
    const { center } = plant.filaments.at(-1)!;
    expect(Math.hypot(center[0], center[1])).toBeCloseTo((plant.shape.rimRadius + plant.tank.radius) / 2, 3);
  });

  test('a mesh stands in the design itself', () => {
    const bytes = cubeStl([100, 100, 100]);
    const { file } = addMesh(presentOf(presets[0]!.file as DesignFile), 'bracket', base64Of(bytes), 'mm');
    const raised = withField(
      file,
      { kind: 'obstacle', index: (file.obstacles ?? []).length - 1 },
      ['position'],
      ['0 m', '0 m', '0.5 m'],
    );
    expect(opened(raised).meshes[0]?.position.length).toBe(12 * 9);
  });

  test('base64 of bytes decodes to the same bytes', () => {
    fc.assert(
      fc.property(fc.uint8Array({ maxLength: 70_000 }), (bytes) => {
        expect(new Uint8Array(Buffer.from(base64Of(bytes), 'base64'))).toEqual(new Uint8Array(bytes));
      }),
      { seed: SEED, numRuns: 20 },
    );
  });
});

describe('refusals', () => {
  const file = presets[0]!.file as DesignFile;
  const [typeName = ''] = Object.keys(file.filamentTypes);

  test('a type in use is not deleted, and says what uses it', () => {
    const result = removeParts(file, [{ kind: 'type', name: typeName }]);
    expect(result).toMatchObject({ ok: false, reason: expect.stringContaining(file.filaments[0]!.name) as string });
  });

  test('a type goes together with the sets that use it', () => {
    const sets = file.filaments.map((_, index): Part => ({ kind: 'set', index }));
    expect(made(removeParts(file, [{ kind: 'type', name: typeName }, ...sets])).filaments).toEqual([]);
  });

  test.each(['mirror', 'tank', 'vacuum', 'film'] as const)('the %s stays', (kind) => {
    expect(removeParts(file, [{ kind }])).toEqual({ ok: false, reason: `A plant needs its ${kind}.` });
  });

  test('filaments of a ring are neither deleted nor named one by one', () => {
    const part: Part = { kind: 'filament', set: 0, number: 3 };
    for (const result of [removeParts(file, [part]), renamePart(file, part, 'x'), duplicatePart(file, part)])
      expect(result).toMatchObject({ ok: false, reason: expect.stringContaining('single filaments') as string });
  });

  test('a taken, empty, too long or forbidden name is refused', () => {
    const other = addPart(presentOf(file), 'type').file;
    for (const name of ['coil', '   ', 'x'.repeat(81), '__proto__'])
      expect(renamePart(other, { kind: 'type', name: typeName }, name).ok).toBe(false);
  });
});

describe('single edits', () => {
  const file = presets[0]!.file as DesignFile;

  test('a ring that leaves its axis becomes single filaments in the same edit', () => {
    const moved = movePart(file, { kind: 'set', index: 0 }, [0.01, 0, 0]);
    expect(moved.filaments[0]!.arrangement).toBe('list');
    const [before, after] = [opened(file).filaments, opened(moved).filaments];
    after.forEach(({ center }, i) =>
      expectNear(
        center,
        before[i]!.center.map((v, k) => v + (k === 0 ? 0.01 : 0)),
        SAME_PLACE,
      ),
    );
  });

  test('moving one filament of a ring leaves the others', () => {
    const moved = opened(movePart(file, { kind: 'filament', set: 0, number: 2 }, [0, 0, 0.05]));
    moved.filaments.forEach(({ center, number, set }, i) => {
      const lift = set === 0 && number === 2 ? 0.05 : 0;
      const [x, y, z] = opened(file).filaments[i]!.center;
      expectNear(center, [x, y, z + lift], SAME_PLACE);
    });
  });

  test('a ring is set in the unit that the file uses', () => {
    const inches = withValue(file, ['filaments', 0, 'diameter'], '114 in');
    const ring = setRing(inches, 0, { diameter: 2.8702, height: 0.95 });
    expect(ring.filaments[0]).toMatchObject({ diameter: '113 in', height: '0.95 m' });
    expect(setRing(ring, 0, {})).toEqual(ring);
    expect(setRing(ring, 99, { diameter: 1 })).toBe(ring);
  });

  test('of three filaments deleted from a list, the exceptions of the others follow', () => {
    const listed = withOutOfUse(
      asSingleFilaments(file, 0),
      [
        { set: 0, number: 5 },
        { set: 0, number: 2 },
      ],
      true,
    );
    const parts = [1, 2, 3].map((number): Part => ({ kind: 'filament', set: 0, number }));
    const left = opened(made(removeParts(listed, parts)));
    expect(left.filaments.filter(({ outOfUse }) => outOfUse).map(({ name }) => name)).toEqual([
      opened(file).filaments[4]!.name,
    ]);
  });

  test('an own charge is given and taken back, in a ring and in a list', () => {
    const places = [
      { set: 0, number: 1 },
      { set: 0, number: 4 },
    ];
    for (const base of [file, asSingleFilaments(file, 0)]) {
      const charged = withOwnCharge(base, places, '123 mg');
      expect(opened(charged).filaments.filter(({ charge }) => Math.abs(charge - 123e-6) < 1e-15)).toHaveLength(2);
      expect(withOwnCharge(charged, places, undefined)).toEqual(base);
    }
  });

  test('an optional section appears with its first field and goes with its last', () => {
    const bare = withField(file, { kind: 'mirror' }, ['clearAperture'], undefined);
    const given = withField(bare, { kind: 'mirror' }, ['clearAperture', 'outerDiameter'], '2.4 m');
    expect(opened(given).shape.clearOuterRadius).toBeCloseTo(1.2, 12);
    expect(withField(given, { kind: 'mirror' }, ['clearAperture', 'outerDiameter'], undefined)).toEqual(bare);
  });

  test('fields that exclude or need each other change together', () => {
    const [name = ''] = Object.keys(file.filamentTypes);
    const part: Part = { kind: 'type', name };
    const at = (next: DesignFile, ...path: (string | number)[]) => valueAt(next, ['filamentTypes', name, ...path]);
    const aimed = withField(withLaw(file, name, 'cosine power'), part, ['emission', 'direction'], 'inward');
    expect(at(withField(aimed, part, ['emission', 'tilt'], '10 deg'), 'emission', 'direction')).toBeUndefined();
    const cone = withField(
      withField(file, part, ['shield'], { removes: 'half-space', direction: 'outward' }),
      part,
      ['shield', 'removes'],
      'cone',
    );
    opened(cone);
    const clips = withField(withField(file, part, ['clipsPerLoop'], [1, 2, 3, 4]), part, ['loops'], 6);
    expect(at(clips, 'clipsPerLoop')).toEqual([1, 2, 3, 4, 4, 4]);
    const bent = withPath(file, name, true);
    expect(opened(bent).filaments[0]!.charge).toBeCloseTo(opened(file).filaments[0]!.charge, 12);
    opened(withPath(bent, name, false));
  });

  test('a witness keeps its place when it is given a position, and comes back to the mirror', () => {
    const present = presentOf(file);
    const free = withWitnessPlace(present, 0, true);
    expectNear(opened(free).witnesses[0]!.position, present.plant.witnesses[0]!.position, POSITION_WRITTEN);
    expectNear(
      opened(withWitnessPlace(presentOf(free), 0, false)).witnesses[0]!.position,
      present.plant.witnesses[0]!.position,
      ANGLE_WRITTEN,
    );
  });

  test('a table makes a set of its own, charged where it names no charge', () => {
    const [name = ''] = Object.keys(file.filamentTypes);
    const bare = withValue(
      withValue(file, ['filamentTypes', name, 'clipMass'], undefined),
      ['filaments', 0, 'charge'],
      '0.3 g',
    );
    const csv = 'x,y,z\nmm,mm,mm\n0,0,900\n100,0,900\n';
    expect(
      opened(made(withNewTable(bare, name, csv)))
        .filaments.slice(-2)
        .map(({ center }) => center[0]),
    ).toEqual([0, 0.1]);
  });

  test('a renamed feed of a list takes its filaments with it', () => {
    const listed = asSingleFilaments(file, 0);
    const feed = opened(listed).filaments[0]!.feed!;
    const renamed = opened(made(renamePart(listed, { kind: 'feed', name: feed }, 'north rack')));
    const fired = (plant: Plant, by: string) => plant.filaments.filter((one) => one.feed === by).length;
    expect(fired(renamed, 'north rack')).toBe(fired(opened(file), feed));
    expect(parseQuantity(feed, 'length').ok).toBe(false);
  });
});
