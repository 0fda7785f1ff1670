import { describe, expect, test } from 'vitest';
import { BEAT, judgeLease, mayWrite, STALE } from '../../viewer/state/keep/lease.ts';

const NOW = 1_000_000;
const theirs = (age: number) => ({ designId: 'd', holder: 'they', beat: NOW - age });
const mine = { designId: 'd', holder: 'I', beat: 0 };

describe('a lease', () => {
  test('that nobody holds, or that is mine, is free without asking', () => {
    for (const answered of [null, true, false]) {
      expect(judgeLease(undefined, 'I', NOW, answered)).toBe('free');
      expect(judgeLease(mine, 'I', NOW, answered)).toBe('free');
    }
  });

  test('of another tab is asked for first, however old', () => {
    expect(judgeLease(theirs(0), 'I', NOW, null)).toBe('ask');
    expect(judgeLease(theirs(1e9), 'I', NOW, null)).toBe('ask');
  });

  test('of a tab that answers is taken, even if it has been asleep', () => {
    expect(judgeLease(theirs(1e9), 'I', NOW, true)).toBe('taken');
  });

  test('of a tab that does not answer is free only once it is stale', () => {
    expect(judgeLease(theirs(STALE - 1), 'I', NOW, false)).toBe('taken');
    expect(judgeLease(theirs(STALE), 'I', NOW, false)).toBe('free');
  });

  test('from the future proves nothing: the clock was set back', () => {
    expect(judgeLease(theirs(-1e7), 'I', NOW, false)).toBe('free');
  });

  test('outlives several missed signs of life', () => {
    expect(STALE).toBeGreaterThanOrEqual(3 * BEAT);
  });

  test('lets only its holder write', () => {
    expect(mayWrite(undefined, 'I')).toBe(true);
    expect(mayWrite(mine, 'I')).toBe(true);
    expect(mayWrite(theirs(1e9), 'I')).toBe(false);
  });
});
