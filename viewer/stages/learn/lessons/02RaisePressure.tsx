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
  predict: ({ halving, pressure, way, filamentName }, say) => {
    const told = `At ${say.pressure(halving)} half of the vapour has met a molecule after ${say.length(way)}: ${say.number(halving / pressure, 2)} times the pressure of the design.`;
    return {
      text: `A nozzle on ${filamentName} leads its vapour onto one spot of the mirror, ${say.length(way)} away. Your design fires at ${say.pressure(pressure)}. How far must the pressure rise before half of the atoms are knocked off their way?`,
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
    `In a very good vacuum (${say.pressure(GOOD_VACUUM)}) ${say.percent(facts.clearShare.value)} of the vapour reaches the mirror, and it lands ${say.length(facts.clearSpot)} from the middle of its spot (root of the mean square).`,
    `At ${say.pressure(FAR_ABOVE * facts.halving)}, ${FAR_ABOVE} times the pressure at which half are scattered, ${say.percent(facts.thickShare.value)} (± ${say.percent(facts.thickShare.standardError)}) reach it${Number.isFinite(facts.thickSpot) ? `, ${say.length(facts.thickSpot)} from their middle` : ''}. The rest has found the wall.`,
    'Each collision changes direction and speed. A scattered atom has forgotten where it came from: shadows fill in, edges blur, and what was planned from lines of sight no longer holds.',
  ],
  check: ({ clearShare, thickShare, halving }, say) => {
    const ratio = thickShare.value / clearShare.value;
    const told = `${say.percent(thickShare.value)} against ${say.percent(clearShare.value)} in good vacuum: ${say.number(ratio, 2)} times as much, counted on thousands of atoms.`;
    return {
      text: `At ${say.pressure(FAR_ABOVE * halving)}, how much of the nozzle’s aluminium reaches the mirror, compared with a good vacuum?`,
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
          wrong: `${told} A diffusing atom sticks to the first surface that it meets, and that is often not the mirror.`,
        },
      ),
    };
  },
  Picture,
});
