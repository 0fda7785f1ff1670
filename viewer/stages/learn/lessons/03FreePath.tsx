/** Free path against the size of the tank. */
import { lazy } from 'react';
import { nearestChoices, rangeChoices } from '../choices.ts';
import { atomPath, pathFacts, pressureOfPath, stateAt, type PathFacts } from '../facts/freePath.ts';
import { closed } from '../lesson.ts';
import type { Plant } from '../../../../engine/index.ts';

const Picture = lazy(async () => ({ default: (await import('../pictures/PathPicture.tsx')).PathPicture }));

interface Facts extends PathFacts {
  readonly plant: Plant;
}

export const freePath = closed<Facts>({
  key: 'free-path',
  title: 'Free path and tank',
  aim: 'Compare how far an atom flies between collisions with how large your tank is.',
  doing: 'Move the pressure and read the free path. Find the pressure at which it is as long as your tank is wide.',
  facts: async ({ plant }) => ({ plant, ...pathFacts(plant) }),
  predict: ({ plant, pressure, tankDiameter }, say) => {
    const path = atomPath(plant, pressure);
    const told = `It flies ${say.way(path)}, which is ${say.number(path / tankDiameter, 2)} times the width of the tank.`;
    return {
      text: `Your tank is ${say.length(tankDiameter)} wide and at ${say.pressure(pressure)}. How far does an aluminium atom fly in this gas before it meets a molecule?`,
      choices: rangeChoices(
        path / tankDiameter,
        [
          { text: `less than the width of the tank`, below: 1 },
          { text: `1 to 10 widths, up to ${say.way(10 * tankDiameter)}`, below: 10 },
          { text: `10 to 1000 widths, up to ${say.way(1000 * tankDiameter)}`, below: 1000 },
          { text: 'farther still', below: Infinity },
        ],
        {
          right: told,
          wrong: `${told} Molecules are a third of a millionth of a millimetre across: one must fly far to hit one, but there are a great many.`,
        },
      ),
    };
  },
  explain: ({ plant, pressure, tankDiameter }, say) => {
    const { knudsen, regime, range } = stateAt(plant, pressure);
    return [
      `At ${say.pressure(pressure)} an aluminium atom flies ${say.way(atomPath(plant, pressure))} between collisions. At ${say.pressure(pressureOfPath(plant, tankDiameter))} it would fly just the ${say.length(tankDiameter)} that your tank is wide.`,
      `The gas's own free path over the width of the tank is its Knudsen number: ${say.number(knudsen)} here, so the flow is ${regime}; by its pressure it is ${range}.`,
      'In molecular flow, molecules meet the wall more often than each other: nothing pushes gas toward the pump, each molecule must find the opening by itself.',
    ];
  },
  check: ({ plant, pressure }, say) => {
    const [before, after] = [atomPath(plant, pressure), atomPath(plant, 10 * pressure)];
    const told = `From ${say.way(before)} to ${say.way(after)}.`;
    return {
      text: 'A small leak raises the pressure tenfold. What becomes of the free path?',
      choices: nearestChoices(
        after / before,
        [
          { text: 'it becomes a hundredth', value: 0.01 },
          { text: 'it becomes a tenth', value: 0.1 },
          { text: 'it becomes a third', value: 1 / 3 },
          { text: 'it stays as it is', value: 1 },
        ],
        { right: told, wrong: `${told} Ten times as many molecules are ten times as often in the way.` },
      ),
    };
  },
  Picture,
});
