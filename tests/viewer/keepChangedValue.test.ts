import { expect, test } from 'vitest';
import { presets } from '../../presets/index.ts';
import { withOwnValues, withSetField } from './filamentEdits.ts';
import { changedValue } from '../../viewer/state/keep/changedValue.ts';

const base = presets[0]!.file;

test('an edit of one field is told by its new value', () => {
  expect(changedValue(base, withSetField(base, 0, 'height', '0.95 m'))).toBe('0.95 m');
  expect(changedValue(base, withSetField(base, 0, 'count', 18))).toBe('18');
  expect(changedValue(base, { ...base, name: 'Tarn Hill, rewired' })).toBe('Tarn Hill, rewired');
  const out = withOwnValues(base, 0, 3, { outOfUse: true }) as typeof base;
  expect(changedValue(out, withOwnValues(out, 0, 3, { charge: '0.4 g' }))).toBe('0.4 g');
});

test('a field that was not there is told too', () => {
  expect(changedValue({ film: {} }, { film: { outOfUse: true } })).toBe('yes');
});

test.each([
  ['nothing changed', base, base],
  ['two fields changed', { a: 1, b: 2 }, { a: 2, b: 3 }],
  ['a field went', { a: 1, b: 2 }, { a: 1 }],
  ['a part came', { a: 1 }, { a: 1, b: { c: 1 } }],
  ['a list became an object', { a: [1] }, { a: { 0: 1 } }],
  ['a text too long for a word', { a: '' }, { a: 'x'.repeat(41) }],
])('%s: no value', (_name, before, after) => {
  expect(changedValue(before, after)).toBeNull();
});
