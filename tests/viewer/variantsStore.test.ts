/** Pinning, choosing, deleting; and evaluation in the background, which never gets in the page's way. */
import { afterEach, beforeEach, describe, expect, test, vi } from 'vitest';
import type { Coat, Plant } from '../../engine/index.ts';
import { presets } from '../../presets/index.ts';
import { differencesOf } from '../../viewer/format/differences.ts';
import { useDesign } from '../../viewer/state/designStore.ts';
import { editDesign, undo } from '../../viewer/state/editDesign.ts';
import { useResult } from '../../viewer/state/resultStore.ts';
import { evaluateVariant, followVariants, stopVariant } from '../../viewer/state/variants/evaluateVariants.ts';
import { openVariantsText, variantsText } from '../../viewer/state/variants/variantFiles.ts';
import { restoreVariants, variantsState } from '../../viewer/state/variants/variantsState.ts';
import {
  bringBack,
  compare,
  comparedIds,
  CURRENT,
  deleteVariant,
  pinCurrent,
  renameVariant,
  restoreVariant,
  swapCompared,
  useVariants,
} from '../../viewer/state/variants/variantStore.ts';

type Step = (share: number) => Promise<void> | void;
interface Asked {
  readonly plant: Plant;
  readonly step: Step;
  readonly finish: () => void;
}

/** Evaluations that the page has asked for and that wait for the test to go on. */
const asked = vi.hoisted(() => [] as unknown[]) as Asked[];

vi.mock('../../viewer/state/evaluator.ts', () => ({
  evaluator: {
    evaluate: async (plant: Plant, _options: unknown, { step }: { step: Step }): Promise<unknown> => {
      await new Promise<void>((resolve) => asked.push({ plant, step, finish: resolve }));
      await step(1);
      return { plant };
    },
  },
}));

const coatOf = (plant: Plant): Coat => ({ plant }) as unknown as Coat;
const names = (): string[] => useVariants.getState().variants.map(({ name }) => name);
const phases = (): string[] => useVariants.getState().variants.map(({ phase }) => phase);
const idOf = (name: string): string => useVariants.getState().variants.find((item) => item.name === name)!.id;
const later = async (): Promise<void> => new Promise((resolve) => setTimeout(resolve, 5));
const setDiameter = (diameter: string): void => {
  const problems = editDesign(`diameter ${diameter}`, (file) => ({
    ...file,
    filaments: [{ ...file.filaments[0], diameter }, ...file.filaments.slice(1)],
  }));
  expect(problems).toEqual([]);
};

const first = useDesign.getState();
let end: () => void = () => undefined;

beforeEach(() => {
  asked.length = 0;
  useDesign.setState(first);
  useVariants.setState({ variants: [], chosenA: null, chosenB: null, deleted: null });
  useResult.setState({ coat: coatOf(first.current.plant), phase: 'done' });
});
afterEach(async () => {
  end();
  for (const { finish } of asked) finish();
  await later();
});

describe('variants', () => {
  test('are named after the plant, then counted', () => {
    for (let i = 0; i < 3; i++) expect(pinCurrent()).toBeNull();
    expect(names()).toEqual([presets[0]?.file.name, 'Variant 2', 'Variant 3']);
    deleteVariant(idOf('Variant 2'));
    pinCurrent();
    expect(names()).toEqual([presets[0]?.file.name, 'Variant 3', 'Variant 4']);
  });

  test('are twelve at most', () => {
    for (let i = 0; i < 12; i++) expect(pinCurrent()).toBeNull();
    expect(pinCurrent()).toMatch(/12 variants already/);
    expect(names().length).toBe(12);
  });

  test('take the coat of the page if it is theirs, and wait for their own if it is not', () => {
    pinCurrent('known');
    setDiameter('2.8 m');
    pinCurrent('unknown');
    useResult.setState({ phase: 'computing' });
    useResult.setState({ phase: 'cancelled' });
    pinCurrent('cancelled');
    expect(phases()).toEqual(['done', 'waiting', 'waiting']);
  });

  test('are renamed in their place, never to nothing or to a name that is taken', () => {
    pinCurrent('a');
    pinCurrent('b');
    expect(renameVariant(idOf('a'), '  ')).toMatch(/1 to 80 characters/);
    expect(renameVariant(idOf('a'), 'x'.repeat(81))).toMatch(/found 81/);
    expect(renameVariant(idOf('a'), 'B')).toMatch(/Another variant is called/);
    expect(renameVariant(idOf('a'), ' c ')).toBeNull();
    expect(names()).toEqual(['c', 'b']);
  });

  test('come back where they were deleted', () => {
    for (const name of ['a', 'b', 'c']) pinCurrent(name);
    const before = useVariants.getState().variants;
    deleteVariant(idOf('b'));
    expect(names()).toEqual(['a', 'c']);
    bringBack();
    expect(useVariants.getState().variants).toEqual(before);
  });

  test('become the current design by an edit that can be undone', () => {
    pinCurrent('a');
    setDiameter('2.8 m');
    const edited = useDesign.getState().current;
    restoreVariant(idOf('a'));
    expect(useDesign.getState().current).toBe(first.current);
    expect(useDesign.getState().past.at(-1)?.label).toBe('restore a');
    undo();
    expect(useDesign.getState().current).toBe(edited);
  });
});

describe('the two that are compared', () => {
  const pair = (): string[] | null => {
    const ids = comparedIds(useVariants.getState());
    const name = (id: string): string => useVariants.getState().variants.find((item) => item.id === id)?.name ?? id;
    return ids && [name(ids.a), name(ids.b)];
  };

  test('are the last pinned and the current design, unless chosen', () => {
    expect(pair()).toBeNull();
    pinCurrent('a');
    pinCurrent('b');
    expect(pair()).toEqual(['b', CURRENT]);
    compare('a', idOf('a'));
    expect(pair()).toEqual(['a', CURRENT]);
    compare('b', idOf('b'));
    expect(pair()).toEqual(['a', 'b']);
  });

  test('swap, also when one is chosen for the other side', () => {
    pinCurrent('a');
    swapCompared();
    expect(pair()).toEqual([CURRENT, 'a']);
    compare('a', idOf('a'));
    expect(pair()).toEqual(['a', CURRENT]);
  });

  test('are chosen anew when one is deleted or another pinned', () => {
    for (const name of ['a', 'b', 'c']) pinCurrent(name);
    compare('a', idOf('a'));
    compare('b', idOf('b'));
    deleteVariant(idOf('b'));
    expect(pair()).toEqual(['a', CURRENT]);
    deleteVariant(idOf('a'));
    expect(pair()).toEqual(['c', CURRENT]);
    swapCompared();
    deleteVariant(idOf('c'));
    expect(pair()).toBeNull();
  });
});

describe('evaluation in the background', () => {
  /** Three variants without coats. */
  function pinThree(): void {
    for (const diameter of ['2.8 m', '2.7 m', '2.6 m']) {
      setDiameter(diameter);
      pinCurrent(diameter);
    }
    end = followVariants();
  }

  test('takes one after another', async () => {
    pinThree();
    expect(phases()).toEqual(['computing', 'waiting', 'waiting']);
    for (let i = 0; i < 3; i++) {
      expect(asked.length).toBe(i + 1);
      asked[i]?.finish();
      await later();
    }
    expect(phases()).toEqual(['done', 'done', 'done']);
    for (const { coat, snapshot } of useVariants.getState().variants) expect(coat?.plant).toBe(snapshot.plant);
  });

  test('gives way to the page and begins again when it has finished', async () => {
    pinThree();
    useResult.setState({ phase: 'computing' });
    await expect(asked[0]?.step(0.5)).rejects.toThrow();
    asked[0]?.finish();
    await later();
    expect(phases()).toEqual(['waiting', 'waiting', 'waiting']);
    expect(asked.length).toBe(1);
    useResult.setState({ phase: 'done' });
    expect(phases()).toEqual(['computing', 'waiting', 'waiting']);
    expect(asked.length).toBe(2);
  });

  test('takes over what the page has worked out itself', () => {
    pinThree();
    const { plant } = useDesign.getState().current;
    useResult.setState({ coat: coatOf(plant), phase: 'done' });
    expect(phases()).toEqual(['computing', 'waiting', 'done']);
  });

  test('is stopped one by one, and goes on with the next', async () => {
    pinThree();
    stopVariant(idOf('2.8 m'));
    asked[0]?.finish();
    await later();
    expect(phases()).toEqual(['stopped', 'computing', 'waiting']);
    asked[1]?.finish();
    await later();
    evaluateVariant(idOf('2.8 m'));
    expect(phases()).toEqual(['waiting', 'done', 'computing']);
  });

  test('forgets a variant that is deleted meanwhile', async () => {
    pinThree();
    deleteVariant(idOf('2.8 m'));
    asked[0]?.finish();
    await later();
    expect(names()).toEqual(['2.7 m', '2.6 m']);
    expect(phases()).toEqual(['computing', 'waiting']);
  });
});

describe('variants that are kept', () => {
  test('come back as they were, to be evaluated again', () => {
    pinCurrent('a');
    setDiameter('2.8 m');
    pinCurrent('b');
    const before = useVariants.getState().variants;
    const kept = JSON.parse(JSON.stringify(variantsState())) as unknown;
    useVariants.setState({ variants: [] });
    expect(restoreVariants(kept)).toEqual([]);
    expect(names()).toEqual(['a', 'b']);
    expect(phases()).toEqual(['waiting', 'waiting']);
    useVariants.getState().variants.forEach(({ snapshot }, i) => {
      expect(differencesOf(before[i]!.snapshot, snapshot)).toEqual([]);
    });
  });

  test('stay as they are when what is to be restored is broken', () => {
    pinCurrent('a');
    expect(
      restoreVariants({ format: 'evenfall variants', version: 1, variants: [{ name: 'x', design: {} }] }),
    ).not.toEqual([]);
    expect(restoreVariants(null)).not.toEqual([]);
    expect(names()).toEqual(['a']);
  });

  test('are added to those pinned when a file is opened: known ones left out, taken names told apart', () => {
    pinCurrent('a');
    const { text, leftOut } = variantsText(useVariants.getState().variants);
    expect(leftOut).toEqual([]);
    expect(openVariantsText(text, new Map())).toEqual([]);
    expect(names()).toEqual(['a']);
    useVariants.setState({ variants: [] });
    setDiameter('2.8 m');
    pinCurrent('a');
    expect(openVariantsText(text, new Map())).toEqual([]);
    expect(names()).toEqual(['a', 'a (2)']);
  });

  test('are refused when they would be too many, or no JSON', () => {
    for (let i = 0; i < 7; i++) pinCurrent(`v${i}`);
    const { text } = variantsText(useVariants.getState().variants);
    setDiameter('2.8 m');
    useVariants.setState({ variants: [] });
    for (let i = 0; i < 6; i++) pinCurrent(`v${i}`);
    expect(openVariantsText(text, new Map()).map(({ path }) => path)).toEqual(['variants']);
    expect(openVariantsText('{', new Map())).not.toEqual([]);
    expect(names().length).toBe(6);
  });
});
