import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { momentText } from '../../viewer/panels/keep/momentText.ts';
import { freshTime, textSum, type KeptDesign } from '../../viewer/state/keep/records.ts';
import {
  isUnsaved,
  MAX_RECENT,
  MAX_STATES,
  MAX_UNSAVED,
  recoverable,
  sortDesigns,
  statesToDrop,
} from '../../viewer/state/keep/retention.ts';

const SEED = 20_260_101;

function design(id: string, usedAt: number, more: Partial<KeptDesign> = {}): KeptDesign {
  return { id, name: id, head: usedAt, usedAt, saved: null, declined: null, ...more };
}

describe('the states of a design', () => {
  test('stay, all of them, up to fifty', () => {
    const times = Array.from({ length: MAX_STATES }, (_, i) => 1000 + i);
    expect(statesToDrop(times, 1000)).toEqual([]);
  });

  test('go oldest first beyond fifty', () => {
    const times = Array.from({ length: MAX_STATES + 3 }, (_, i) => 1000 + i);
    expect(statesToDrop(times, times.at(-1)!)).toEqual([1002, 1001, 1000]);
  });

  test('go around the one on the page, even if it is the oldest', () => {
    const times = Array.from({ length: MAX_STATES + 2 }, (_, i) => 1000 + i);
    expect(statesToDrop(times, 1000)).toEqual([1002, 1001]);
  });

  test('leave exactly fifty, whatever their order, and never an older one than one that went', () => {
    const times = fc.uniqueArray(fc.integer({ min: 1, max: 1e6 }), { minLength: 1, maxLength: 140 });
    fc.assert(
      fc.property(times, fc.nat(), (all, pick) => {
        const head = all[pick % all.length]!;
        const dropped = new Set(statesToDrop(all, head));
        const kept = all.filter((at) => !dropped.has(at));
        expect(kept.length).toBe(Math.min(all.length, MAX_STATES));
        expect(kept).toContain(head);
        const oldestKept = Math.min(...kept.filter((at) => at !== head), Infinity);
        for (const at of dropped) expect(at).toBeLessThan(oldestKept);
      }),
      { seed: SEED },
    );
  });
});

describe('the designs', () => {
  test('are listed by their last use, the newest twelve as recent', () => {
    const all = Array.from({ length: 20 }, (_, i) => design(`d${i}`, i, { saved: i }));
    const { recent, older, dropped } = sortDesigns(all);
    expect(recent.map(({ id }) => id)).toEqual(Array.from({ length: MAX_RECENT }, (_, i) => `d${19 - i}`));
    expect(older).toEqual([]);
    expect(dropped.length).toBe(8);
  });

  test('whose edits lie in no file are kept beyond those', () => {
    const all = Array.from({ length: 20 }, (_, i) => design(`d${i}`, i, { saved: i === 3 ? null : i }));
    const { older, dropped } = sortDesigns(all);
    expect(older.map(({ id }) => id)).toEqual(['d3']);
    expect(dropped.map(({ id }) => id)).not.toContain('d3');
  });

  test('do not fill the disk for ever', () => {
    const { older, dropped } = sortDesigns(Array.from({ length: 100 }, (_, i) => design(`d${i}`, i)));
    expect(older.length).toBe(MAX_UNSAVED);
    expect(dropped.length).toBe(100 - MAX_RECENT - MAX_UNSAVED);
  });

  test('are unsaved if their last state is not the one in the file', () => {
    expect(isUnsaved({ head: 2, saved: 1 })).toBe(true);
    expect(isUnsaved({ head: 2, saved: null })).toBe(true);
    expect(isUnsaved({ head: 2, saved: 2 })).toBe(false);
  });
});

describe('what is offered after a crash', () => {
  const nowhere = new Set<string>();

  test('is the design used last that lies in no file', () => {
    const all = [design('old', 1), design('saved', 3, { saved: 3 }), design('new', 2)];
    expect(recoverable(all, nowhere)?.id).toBe('new');
  });

  test('is none if all lie in files, or there are none', () => {
    expect(recoverable([design('a', 1, { saved: 1 })], nowhere)).toBeNull();
    expect(recoverable([], nowhere)).toBeNull();
  });

  test('is not what another tab has open', () => {
    expect(recoverable([design('a', 1), design('b', 2)], new Set(['b']))?.id).toBe('a');
  });

  test('is not what was declined, until it is edited again', () => {
    expect(recoverable([design('a', 2, { declined: 2 })], nowhere)).toBeNull();
    expect(recoverable([design('a', 3, { declined: 2 })], nowhere)?.id).toBe('a');
  });
});

describe('sums and times', () => {
  // from memory of the published FNV-1a test vectors (32 bits): "", "a", "foobar"
  test.each([
    ['', 0x811c9dc5],
    ['a', 0xe40c292c],
    ['foobar', 0xbf9cf968],
  ])('the sum of "%s" is the published one', (text, sum) => {
    expect(textSum(text)).toBe(sum);
  });

  test('times rise strictly, even within a millisecond', () => {
    const times = Array.from({ length: 1000 }, freshTime);
    for (let i = 1; i < times.length; i++) expect(times[i]).toBeGreaterThan(times[i - 1]!);
  });

  test('a moment names its day only if it is not today, its year only if it is not this one', () => {
    const now = new Date(2026, 2, 3, 18, 0).getTime();
    expect(momentText(new Date(2026, 2, 3, 14, 32).getTime(), now)).toBe('14:32');
    expect(momentText(new Date(2026, 1, 3, 4, 2).getTime(), now)).toBe('3 Feb, 04:02');
    expect(momentText(new Date(2025, 1, 3, 4, 2).getTime(), now)).toBe('3 Feb 2025, 04:02');
  });
});
