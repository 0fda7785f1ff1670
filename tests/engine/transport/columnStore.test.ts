import { expect, test } from 'vitest';
import type { Column } from '../../../engine/transport/column.ts';
import { createColumnStore } from '../../../engine/transport/columnStore.ts';

const LENGTH = 1000;
const BYTES = 8 * LENGTH;
const column = (take: (length: number) => Float64Array): Column => ({ deposit: take(LENGTH), signature: null });

test('a dear column is kept at once, another when it is shown again', () => {
  const store = createColumnStore(10 * BYTES);
  const [dear, cheap] = [column(store.take), column(store.take)];
  store.show('dear', dear, true);
  store.show('cheap', cheap, false);
  expect(store.find('dear', 'column')).toBe(dear);
  expect(store.find('cheap', 'column')).toBeUndefined();
  store.show('cheap', cheap, false);
  expect(store.find('cheap', 'column')).toBe(cheap);
});

test('columns are met once; what is kept was met before', () => {
  const store = createColumnStore(10 * BYTES);
  store.show('kept', column(store.take), true);
  expect(store.meet(['kept', 'new'])).toBe(false);
  expect(store.meet(['new', 'other'])).toBe(true);
  expect(store.meet(['other'])).toBe(false);
});

test('an array that the store has, or that is in use, is not given out again', () => {
  const store = createColumnStore(10 * BYTES);
  const [kept, passing] = [column(store.take), column(store.take)];
  store.show('kept', kept, true);
  store.show('passing', passing, false);
  expect(store.take(LENGTH)).not.toBe(passing.deposit);
  store.letGo('kept', kept);
  store.letGo('passing', passing);
  expect(store.take(LENGTH)).toBe(passing.deposit);
  expect(store.take(LENGTH)).not.toBe(kept.deposit);
});

test('what was used least lately is forgotten first, within the bound', () => {
  const store = createColumnStore(3 * BYTES);
  for (const place of ['a', 'b']) store.keep(place, 'partial', () => store.take(LENGTH));
  store.find('a', 'partial');
  store.keep('c', 'partial', () => store.take(LENGTH));
  expect(['a', 'b', 'c'].map((place) => store.find(place, 'partial') !== undefined)).toEqual([true, false, true]);
});
