import { expect, test } from 'vitest';
import type { AnyLesson, PreparedLesson, Question } from '../../viewer/stages/learn/lesson.ts';
import { rightChoice } from '../../viewer/stages/learn/lesson.ts';
import { sayIn } from '../../viewer/stages/learn/say.ts';
import { trainerSheet } from '../../viewer/stages/learn/trainerSheet.ts';

const say = sayIn({ length: 'm', thickness: 'nm', mass: 'mg', pressure: 'mbar', temperature: 'degC' });
const question = (text: string): Question => ({
  text,
  choices: [
    { text: 'no', isRight: false, feedback: 'why not' },
    { text: 'yes', isRight: true, feedback: 'because' },
  ],
});
const prepared: PreparedLesson = {
  predict: (words) => question(`Is ${words.length(2)} long?`),
  explain: () => ['It is so.'],
  check: () => question('And now?'),
  picture: () => null,
};
const lesson: AnyLesson = {
  key: 'one',
  title: 'Light & shade',
  aim: 'See it.',
  doing: 'Move it.',
  cautions: { title: 'Cautions', cautions: ['Keep away.'] },
  prepare: async () => prepared,
};

test('the sheet marks the one right answer of each question and gives its reason', () => {
  const html = trainerSheet([{ lesson, prepared }], 'Tarn Hill', 'today', say);
  expect(html.match(/<strong>yes<\/strong>/g)).toHaveLength(2);
  expect(html).not.toMatch(/<strong>no/);
  expect(html.match(/because/g)).toHaveLength(2);
  expect(html).toMatch(/Is 2\.000.m long\?/);
  expect(html).toMatch(/Keep away\. Local codes and licensed practice come first\./);
});

test('names from a design are text on the sheet, never mark-up', () => {
  const html = trainerSheet([{ lesson, prepared }], '<img src="x"> & more', 'today', say);
  expect(html).toContain('&lt;img src=&quot;x&quot;&gt; &amp; more');
  expect(html).toContain('Light &amp; shade');
  expect(html).not.toContain('<img');
});

test('a lesson that this tank cannot hold says why', () => {
  const html = trainerSheet([{ lesson, refusal: 'no pumps' }], 'Tarn Hill', 'today', say);
  expect(html).toMatch(/Cannot be held in this tank: no pumps/);
  expect(html).not.toMatch(/Check\./);
});

test('a question without a right answer is a fault, not a blank', () => {
  expect(() => rightChoice({ text: '?', choices: [] })).toThrow(/right choice/);
});
