import { describe, expect, test } from 'vitest';
import { openPlantFile } from '../../engine/index.ts';
import { presets } from '../../presets/index.ts';
import { handlesOfAll, movedParts } from '../../viewer/scene/groupHandles.ts';
import { handlesOf, placeOf, type Design } from '../../viewer/scene/handles.ts';
import { obstacleOrder } from '../../viewer/scene/obstacleOrder.ts';
import type { Part } from '../../viewer/state/selection.ts';

/** Places are written with 13 decimals of a metre; sums of a few of them. */
const WRITTEN = 12;

function designOf(file: unknown): Design {
  const opened = openPlantFile(file);
  if (!opened.ok) throw new Error(opened.problems.map(({ message }) => message).join('\n'));
  return { file: opened.file, files: new Map(), plant: opened.plant };
}

const tarnHill = designOf(presets.find(({ id }) => id === 'tarn-hill-as-wired')?.file);
const order = obstacleOrder(tarnHill.file);
const filament = (number: number): Part => ({ kind: 'filament', set: 0, number });
const PARTS: readonly Part[] = [filament(1), filament(7), { kind: 'obstacle', index: 0 }];

const places = (design: Design, parts: readonly Part[]) =>
  parts.map((part) => placeOf(design, part, obstacleOrder(design.file)) ?? [NaN, NaN, NaN]);

describe('several selected parts', () => {
  test.each(['x', 'y', 'z'] as const)('move together along %s by what is asked, and nothing else does', (key) => {
    const handle = handlesOfAll(tarnHill, PARTS, order, 0).find((item) => item.key === key);
    if (!handle) throw new Error(`expected a handle ${key}`);
    expect(handle.label).toBe(`${key} of 3 parts`);
    const by = 0.03;
    const moved = designOf(handle.apply(handle.value + by));
    const k = ['x', 'y', 'z'].indexOf(key);
    places(moved, PARTS).forEach((place, i) => {
      const was = places(tarnHill, PARTS)[i]!;
      place.forEach((value, axis) => expect(value - was[axis]!).toBeCloseTo(axis === k ? by : 0, WRITTEN));
    });
    // single filaments keep their numbers in the list that the ring becomes, and the others their places
    const others = Array.from({ length: 36 }, (_, i) => filament(i + 1)).filter(
      (part) => !PARTS.some((p) => p.kind === 'filament' && part.kind === 'filament' && p.number === part.number),
    );
    places(moved, others).forEach((place, i) => {
      const was = places(tarnHill, others)[i]!;
      place.forEach((value, axis) => expect(value).toBeCloseTo(was[axis]!, WRITTEN));
    });
  });

  test('begin at their common middle', () => {
    const [handle] = handlesOfAll(tarnHill, [filament(1), filament(19)], order, 0);
    expect(Math.hypot(handle!.origin[0], handle!.origin[1])).toBeCloseTo(0, WRITTEN);
    expect(handle!.origin[2]).toBeCloseTo(0.9, WRITTEN);
  });

  test('are moved once each: a set takes its filaments along, a feed stands for its own', () => {
    const set: Part = { kind: 'set', index: 0 };
    expect(movedParts(tarnHill, [filament(3), set, filament(4)])).toEqual([set]);
    const feed = tarnHill.plant.filaments[0]?.feed ?? '';
    const own = tarnHill.plant.filaments.filter((item) => item.feed === feed);
    expect(own.length).toBeGreaterThan(1);
    expect(movedParts(tarnHill, [{ kind: 'feed', name: feed }, filament(own[0]!.number)])).toHaveLength(own.length);
  });

  test('one part alone, and parts without a place beside it, have the handles of that part', () => {
    const ring: Part = { kind: 'set', index: 0 };
    const alone = handlesOf(tarnHill, ring, order, 0).map(({ key, value }) => [key, value]);
    for (const selected of [[ring], [{ kind: 'mirror' }, ring, { kind: 'film' }]] as Part[][])
      expect(handlesOfAll(tarnHill, selected, order, 0).map(({ key, value }) => [key, value])).toEqual(alone);
    expect(handlesOfAll(tarnHill, [{ kind: 'mirror' }, { kind: 'tank' }], order, 0)).toEqual([]);
  });
});
