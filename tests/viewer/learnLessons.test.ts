import { describe, expect, test } from 'vitest';
import { createEvaluator, openPlantFile } from '../../engine/index.ts';
import { presets } from '../../presets/index.ts';
import { rightChoice, type Bench, type Question, type Tools } from '../../viewer/stages/learn/lesson.ts';
import { lessons } from '../../viewer/stages/learn/lessons/all.ts';
import { sayIn } from '../../viewer/stages/learn/say.ts';

const evaluator = createEvaluator();
const tools: Tools = { evaluate: async (plant, options) => evaluator.evaluate(plant, options), step: () => {} };
const say = sayIn({ length: 'm', thickness: 'nm', mass: 'mg', pressure: 'mbar', temperature: 'degC' });

function bench(id: string): Bench {
  const preset = presets.find((item) => item.id === id);
  const opened = openPlantFile(preset?.file);
  if (!opened.ok) throw new Error(`preset ${id}: ${JSON.stringify(opened.problems)}`);
  return { file: opened.file, files: new Map(), plant: opened.plant };
}

const NO_NUMBER = /NaN|Infinity|undefined|null|\[object/;

function expectSound({ text, choices }: Question): void {
  expect(text).toMatch(/[?…]$/);
  expect(choices.filter(({ isRight }) => isRight)).toHaveLength(1);
  expect(new Set(choices.map((choice) => choice.text)).size).toBe(choices.length);
  for (const choice of choices) {
    expect(choice.feedback).not.toBe('');
    expect(`${choice.text} ${choice.feedback}`).not.toMatch(NO_NUMBER);
  }
}

describe.each(['tarn-hill-as-wired', 'teaching-tank', 'tarn-hill-second-ring'])('in %s', (id) => {
  test.each(lessons.map((lesson) => [lesson.key, lesson] as const))(
    'the lesson %s asks questions with one right answer each and explains with numbers',
    async (_key, lesson) => {
      const prepared = await lesson.prepare(bench(id), tools);
      const [prediction, check] = [prepared.predict(say), prepared.check(say)];
      if (process.env['LEARN_SHOW'])
        console.log(
          [
            prediction.text,
            prediction.choices.map((c) => `${c.isRight ? '*' : ' '} ${c.text}`).join('\n'),
            rightChoice(prediction).feedback,
            ...prepared.explain(say),
            check.text,
            check.choices.map((c) => `${c.isRight ? '*' : ' '} ${c.text}`).join('\n'),
            rightChoice(check).feedback,
          ].join('\n'),
        );
      expectSound(prediction);
      expectSound(check);
      const explanation = prepared.explain(say);
      expect(explanation.length).toBeGreaterThan(1);
      for (const paragraph of explanation) expect(paragraph).not.toMatch(NO_NUMBER);
      expect(explanation.join(' ')).toMatch(/\d/);
    },
  );
});
