/** The scale picture. */
import { lazy } from 'react';
import { nearestChoices } from '../choices.ts';
import { FIRST_REGION, magnification, scaleFacts, type ScaleFacts } from '../facts/scale.ts';
import { closed } from '../lesson.ts';

const Picture = lazy(async () => ({ default: (await import('../pictures/ScalePicture.tsx')).ScalePicture }));

/** Things to compare with, m; from everyday life, no source. */
const THINGS = [
  { text: 'a hair, 0.08 mm', value: 0.08e-3 },
  { text: 'a coin, 2 mm', value: 2e-3 },
  { text: 'a kerb, 120 mm', value: 0.12 },
  { text: 'a house, 8 m', value: 8 },
] as const;

export const scale = closed<ScaleFacts>({
  key: 'scale',
  title: 'The scale of it',
  aim: 'Get a feeling for how thin the coat is and how well it must fit.',
  doing: 'Choose how large the region is and read what the coat, its unevenness and one atom become.',
  facts: async (bench, tools) => scaleFacts(bench, tools),
  predict: (facts, say) => {
    const thickness = facts.coat.statistics.mean.value * magnification(facts, FIRST_REGION);
    const told = `The coat would be ${say.millimetres(thickness)} thick.`;
    return {
      text: `Your mirror, ${say.length(facts.diameter)} across, is blown up to a region of ${say.kilometres(FIRST_REGION)}. How thick is the coat then?`,
      choices: nearestChoices(thickness, THINGS, {
        right: told,
        wrong: `${told} Everything grows by the same factor, ${say.number(magnification(facts, FIRST_REGION))}; a coat of ${say.thickness(facts.coat.statistics.mean.value)} has very far to grow.`,
      }),
    };
  },
  explain: (facts, say) => {
    const by = magnification(facts, FIRST_REGION);
    const { minimum, maximum, mean } = facts.coat.statistics;
    return [
      `Blown up ${say.number(by)} times, the filaments hang ${say.kilometres(facts.filamentHeight * by)} above the region and lay a coat of ${say.millimetres(mean.value * by)} on all of it: ${say.millimetres(minimum.value * by)} where it is thinnest, ${say.millimetres(maximum.value * by)} where it is thickest.`,
      `Whatever is uneven becomes an error of the surface. After the telescope has been aligned and focused, ${say.millimetres(facts.surfaceRms * by)} rms and ${say.millimetres(facts.surfacePeakToValley * by)} from valley to peak are left, over ${say.kilometres(FIRST_REGION)}.`,
      `In truth that is ${say.thickness(facts.surfaceRms)} rms on a coat of ${say.thickness(mean.value)}, about ${say.number(mean.value / facts.atom, 2)} atoms deep if they lay one on the other.`,
    ];
  },
  check: (facts, say) => {
    const by = magnification(facts, FIRST_REGION);
    const atom = facts.atom * by;
    const told = `${say.millimetres(atom)}: an aluminium atom is ${say.number(facts.atom * 1e9, 2)} nm across.`;
    return {
      text: `And how large is one aluminium atom in the region of ${say.kilometres(FIRST_REGION)}?`,
      choices: nearestChoices(
        atom,
        [
          { text: 'a bacterium, 0.001 mm', value: 1e-6 },
          { text: 'a grain of flour, 0.02 mm', value: 0.02e-3 },
          { text: 'a pea, 8 mm', value: 8e-3 },
          { text: 'a football, 220 mm', value: 0.22 },
        ],
        { right: told, wrong: `${told} Multiply by ${say.number(by)}.` },
      ),
    };
  },
  Picture,
});
