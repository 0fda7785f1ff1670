/** Straight lines. */
import { lazy } from 'react';
import { nearestChoices, rangeChoices } from '../choices.ts';
import { straightFacts, type StraightFacts } from '../facts/straight.ts';
import { closed } from '../lesson.ts';

const Picture = lazy(async () => ({ default: (await import('../pictures/LaunchPicture.tsx')).LaunchPicture }));

export const straightLines = closed<StraightFacts>({
  key: 'straight-lines',
  title: 'Straight lines',
  aim: 'Follow single aluminium atoms from a filament to where they stick.',
  doing:
    'Launch atoms one by one, then ten at a time. Look for one that bends, and step it from collision to collision.',
  facts: straightFacts,
  predict: ({ flights, met, pressure }, say) => {
    const told = `${met} of ${flights.length} met a molecule.`;
    return {
      text: `The tank is at ${say.pressure(pressure)}. Of ${flights.length} atoms that leave the filaments, how many meet a gas molecule on their way?`,
      choices: rangeChoices(
        met / flights.length,
        [
          { text: 'hardly any: less than one in a hundred', below: 0.01 },
          { text: 'a few: up to one in ten', below: 0.1 },
          { text: 'more than that, but less than half', below: 0.5 },
          { text: 'half of them or more', below: Infinity },
        ],
        {
          right: told,
          wrong: `${told} Even in a vacuum there are very many molecules, but they are small: what counts is how far an atom flies before it hits one.`,
        },
      ),
    };
  },
  explain: (facts, say) => [
    `At ${say.pressure(facts.pressure)} an aluminium atom flies ${say.way(facts.freePath)} on average before it meets a molecule. Its way to the mirror is ${say.length(facts.meanThrow)} on average. So ${say.percent(facts.survival)} of those that have this way before them should fly it undisturbed; ways to the wall are shorter for some atoms and longer for others.`,
    `Of the ${facts.flights.length} atoms that were followed, ${facts.flights.length - facts.met} met nothing, and ${facts.onMirror} ended on the mirror; most of the others stuck to the wall. An atom that meets nothing flies in a straight line: this is why a coat can be computed from lines of sight.`,
    'Where an atom first touches anything cold, it sticks. It does not bounce, and it does not find its way around corners.',
  ],
  check: ({ speed, time, meanThrow }, say) => {
    const told = `Vapour from metal at 1500 K leaves at ${say.number(speed)} m/s on average: ${say.length(meanThrow)} takes ${say.time(time)}.`;
    return {
      text: 'How long is such an atom on its way to the mirror?',
      choices: nearestChoices(
        time,
        [
          { text: 'about a millionth of a second', value: 1e-6 },
          { text: 'about a thousandth of a second', value: 1e-3 },
          { text: 'about a second', value: 1 },
          { text: 'about a quarter of an hour', value: 900 },
        ],
        { right: told, wrong: `${told} It is faster than a rifle bullet, and slower than light by far.` },
      ),
    };
  },
  Picture,
});
