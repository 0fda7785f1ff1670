/** Keys and first hints. */
import { describe, expect, test, vi } from 'vitest';
import { presets } from '../../presets/index.ts';
import { failedMore, HINTS, movedRing, nextHint } from '../../viewer/panels/home/hintStore.ts';
import { isPress, type Press } from '../../viewer/panels/home/keyMatch.ts';
import { mergedGroups, registerKeys, useKeyGroups } from '../../viewer/panels/home/keys.ts';
import { withOutOfUse } from '../../viewer/state/edits/ownValues.ts';
import type { DesignFile } from '../../engine/index.ts';

vi.mock('../../viewer/state/evaluator.ts', () => ({ evaluator: {} }));

const press = (key: string, held: Partial<Press> = {}): Press => ({
  key,
  ctrlKey: false,
  metaKey: false,
  altKey: false,
  shiftKey: false,
  ...held,
});

describe('keys', () => {
  test.each<[string, Press, boolean]>([
    ['P', press('p'), true],
    ['P', press('P', { shiftKey: true }), false],
    ['P', press('p', { ctrlKey: true }), false],
    ['P', press('p', { altKey: true }), false],
    ['?', press('?', { shiftKey: true }), true],
    ['?', press('?'), true],
    ['Ctrl+S', press('s', { ctrlKey: true }), true],
    ['Ctrl+S', press('s', { metaKey: true }), true],
    ['Ctrl+S', press('S', { ctrlKey: true, shiftKey: true }), false],
    ['Ctrl+S', press('s'), false],
    ['Ctrl+Shift+Z', press('Z', { ctrlKey: true, shiftKey: true }), true],
  ])('%s is told from other presses', (keys, event, isIt) => {
    expect(isPress(event, keys)).toBe(isIt);
  });

  test('are listed while they are bound, each once', () => {
    const shown = (): string[] =>
      mergedGroups(useKeyGroups.getState().groups).flatMap(({ title, entries }) =>
        entries.map(({ keys }) => `${title}: ${keys}`),
      );
    const before = shown();
    const ends = [1, 2].map(() => registerKeys('Everywhere', [{ keys: 'P', does: 'Pin' }]));
    expect(shown()).toEqual([...before.slice(0, 4), 'Everywhere: P', ...before.slice(4)]);
    ends.forEach((end) => end());
    expect(shown()).toEqual(before);
  });
});

type Ring = Extract<DesignFile['filaments'][number], { arrangement: 'ring' }>;

describe('the first hints', () => {
  const file = presets[0]!.file;

  test('come one at a time', () => {
    const ids = HINTS.map(({ id }) => id);
    expect(ids.map((_, i) => nextHint(ids.slice(0, i))?.id)).toEqual(ids);
    expect(nextHint(ids)).toBeUndefined();
    expect(nextHint(['pin'])?.id).toBe('ring');
  });

  test('know a ring that was moved, and a filament that failed', () => {
    const wider: DesignFile = { ...file, filaments: [{ ...file.filaments[0]!, diameter: '2.7 m' } as Ring] };
    const failed = withOutOfUse(file, [{ set: 0, number: 7 }], true);
    expect([movedRing(file, wider), movedRing(file, failed), movedRing(file, file)]).toEqual([true, false, false]);
    expect([failedMore(file, failed), failedMore(failed, file), failedMore(file, wider)]).toEqual([true, false, false]);
  });
});
