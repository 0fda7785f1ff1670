/** Raise the pressure. */
import { lazy } from 'react';
import { rangeChoices } from '../choices.ts';
import { FAR_ABOVE, GOOD_VACUUM, raisedFacts, type RaisedFacts } from '../facts/raised.ts';
import { closed } from '../lesson.ts';

const Picture = lazy(async () => ({ default: (await import('../pictures/PressurePicture.tsx')).PressurePicture }));

export const raisePressure = closed<RaisedFacts>({
  key: 'raise-pressure',
  title: 'Raise the pressure',
  aim: 'Watch tracks bend and the spot on the mirror blur when gas is in the way.',
  doing: 'Raise the pressure step by step and compare where the atoms land.',
  facts: raisedFacts,
  predict: ({ halving, pressure, meanThrow, filamentName }, say) => {
    const told = `At ${say.pressure(halving)} half of the vapour has met a molecule after ${say.length(meanThrow)}: ${say.number(halving / pressure, 2)} times the pressure of the design.`;
    return {
      text: `Your design fires at ${say.pressure(pressure)}. How far must the pressure rise before half of the atoms from ${filamentName} are knocked off their way to the mirror?`,
      choices: rangeChoices(
        halving / pressure,
        [
          { text: 'not at all: half of them already are', below: 1 },
          { text: 'up to 5 times', below: 5 },
          { text: '5 to 50 times', below: 50 },
          { text: 'more than 50 times', below: Infinity },
        ],
        {
          right: told,
          wrong: `${told} The share that is scattered depends on the way over the free path, and the free path shrinks as the pressure grows.`,
        },
      ),
    };
  },
  explain: (facts, say) => [
    `In a very good vacuum (${say.pressure(GOOD_VACUUM)}) ${say.percent(facts.clearShare.value)} of the vapour of ${facts.filamentName} reaches the mirror, and its spot is ${say.length(facts.clearSpot)} wide about its middle.`,
    `At ${say.pressure(FAR_ABOVE * facts.halving)}, ${FAR_ABOVE} times the pressure at which half are scattered, ${say.percent(facts.thickShare.value)} (± ${say.percent(facts.thickShare.standardError)}) reach it${Number.isFinite(facts.thickSpot) ? `, spread over ${say.length(facts.thickSpot)}` : ''}: atoms diffuse through the gas and come from all sides.`,
    'Each collision changes direction and speed. A scattered atom has forgotten its filament: shadows fill in, edges blur, and what was planned from lines of sight no longer holds.',
  ],
  check: ({ clearShare, thickShare, halving }, say) => {
    const ratio = thickShare.value / clearShare.value;
    const told = `${say.percent(thickShare.value)} against ${say.percent(clearShare.value)} in good vacuum: ${say.number(ratio, 2)} times as much, counted on thousands of atoms.`;
    return {
      text: `At ${say.pressure(FAR_ABOVE * halving)}, how much of this filament's aluminium reaches the mirror, compared with a good vacuum?`,
      choices: rangeChoices(
        ratio,
        [
          { text: 'less than 0.4 times as much', below: 0.4 },
          { text: '0.4 to 0.8 times', below: 0.8 },
          { text: 'about as much, 0.8 to 1.2 times', below: 1.2 },
          { text: 'more than 1.2 times', below: Infinity },
        ],
        {
          right: told,
          wrong: `${told} A diffusing atom sticks to the first surface that it meets, and near a filament that is often not the mirror.`,
        },
      ),
    };
  },
  Picture,
});
