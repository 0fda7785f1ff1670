import { expect, test } from 'vitest';
import { createRecycler } from '../../../engine/transport/recycler.ts';

test('an array that was given back is given out again, to its own length only', () => {
  const recycler = createRecycler(1e6);
  const array = recycler.take(100);
  recycler.giveBack(array);
  expect(recycler.take(50)).not.toBe(array);
  expect(recycler.take(100)).toBe(array);
  expect(recycler.take(100)).not.toBe(array);
});

test('an array that somebody holds is never given out, however often it is given back', () => {
  const recycler = createRecycler(1e6);
  const array = recycler.take(10);
  recycler.hold(array);
  recycler.hold(array);
  recycler.letGo(array);
  recycler.giveBack(array);
  expect(recycler.take(10)).not.toBe(array);
  recycler.letGo(array);
  recycler.giveBack(array);
  expect(recycler.take(10)).toBe(array);
});

test('no more waits than is allowed', () => {
  const recycler = createRecycler(80);
  const [one, two] = [recycler.take(10), recycler.take(10)];
  recycler.giveBack(one);
  recycler.giveBack(two);
  expect(recycler.take(10)).toBe(two);
  expect(recycler.take(10)).not.toBe(one);
});

test('lengths that are no longer asked for do not fill it for good', () => {
  const recycler = createRecycler(240);
  for (const array of [recycler.take(10), recycler.take(10), recycler.take(10)]) recycler.giveBack(array);
  const wanted = [recycler.take(15), recycler.take(15)];
  for (const array of wanted) recycler.giveBack(array);
  expect(wanted).toContain(recycler.take(15));
  expect(wanted).toContain(recycler.take(15));
});
