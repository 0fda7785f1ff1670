import { describe, expect, test } from 'vitest';
import { searchOf, stageInAddress } from '../../viewer/stages/stageAddress.ts';
import { stages, type Stage } from '../../viewer/stages/stages.ts';

const never = async (): Promise<never> => {
  throw new Error('expected the address to load no stage');
};
const row: readonly Stage[] = ['layout', 'vacuum', 'film'].map((key) => ({
  key,
  title: key,
  question: `${key}?`,
  load: never,
}));

describe('the stage in the address', () => {
  test('is the one that it names, and none if there is no such stage', () => {
    expect(stageInAddress(row, '?stage=film')).toBe('film');
    expect(stageInAddress(row, '?a=1&stage=vacuum&b')).toBe('vacuum');
    for (const search of ['', '?', '?stage', '?stage=', '?stage=Film', '?stages=film', '?stage=<script>', '?stage=%'])
      expect(stageInAddress(row, search)).toBeNull();
  });

  test('is written and read back, whatever else the address says', () => {
    for (const search of ['', '?bench', '?a=1&b=%20x', '?stage=film', '?stage=nonsense&bench'])
      for (const { key } of row.slice(1)) expect(stageInAddress(row, searchOf(row, key, search))).toBe(key);
  });

  test('leaves the rest of the query as it was written, and the first stage unmentioned', () => {
    expect(searchOf(row, 'film', '?bench&a=%20x')).toBe('?bench&a=%20x&stage=film');
    expect(searchOf(row, 'layout', '?stage=film&bench')).toBe('?bench');
    expect(searchOf(row, 'layout', '?stage=film')).toBe('');
    expect(searchOf(row, 'vacuum', '?stage=film')).toBe('?stage=vacuum');
  });
});

describe('the stages', () => {
  test('have keys of their own that an address can carry, titles and questions', () => {
    expect(new Set(stages.map(({ key }) => key)).size).toBe(stages.length);
    for (const { key, title, question } of stages) {
      expect(key).toMatch(/^[a-z][a-z-]*$/);
      expect(title).not.toBe('');
      expect(question).toMatch(/\?$/);
    }
    expect(stages[0]?.key).toBe('layout');
  });
});
