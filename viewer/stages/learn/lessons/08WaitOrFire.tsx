/** Wait or fire. */
import { lazy } from 'react';
import { rangeChoices } from '../choices.ts';
import { IMPATIENT, indexFrom, patienceFacts, type PatienceFacts } from '../facts/patience.ts';
import { closed } from '../lesson.ts';

const Picture = lazy(async () => ({ default: (await import('../pictures/PatiencePicture.tsx')).PatiencePicture }));

const ratioAt = ({ curve, ratio }: PatienceFacts, time: number): number => ratio[indexFrom(curve, time)]!;

export const waitOrFire = closed<PatienceFacts>({
  key: 'wait-or-fire',
  title: 'Wait or fire',
  aim: 'See how the pump-down slows, and what patience buys.',
  doing: 'Move the moment of firing along the curve and read pressure and foreign molecules.',
  facts: patienceFacts,
  predict: ({ ready, early, firingPressure }, say) => {
    const told = `It takes ${say.time(ready)} in all, ${say.number(ready / early, 2)} times as long.`;
    return {
      text: `Your tank reaches ${say.pressure(IMPATIENT * firingPressure)} after ${say.time(early)} of pumping. How long does it take in all to the firing pressure, a tenth of that?`,
      choices: rangeChoices(
        ready / early,
        [
          { text: `hardly longer: less than ${say.time(1.5 * early)}`, below: 1.5 },
          { text: `up to three times as long, ${say.time(3 * early)}`, below: 3 },
          { text: `three to fifteen times, up to ${say.time(15 * early)}`, below: 15 },
          { text: 'longer still', below: Infinity },
        ],
        {
          right: told,
          wrong: `${told} The air is gone early; after that the pumps take away what the surfaces give off, and these do not hurry.`,
        },
      ),
    };
  },
  explain: (facts, say) => [
    `After ${say.time(facts.early)} the tank is at ${say.pressure(IMPATIENT * facts.firingPressure)}, after ${say.time(facts.ready)} at ${say.pressure(facts.firingPressure)}. There, ${say.percent(facts.waterShare)} of the gas is water from the surfaces.`,
    `A shot fired early would build ${say.number(ratioAt(facts, facts.early), 2)} foreign molecules into the film for each aluminium atom; a shot fired when the tank is ready, ${say.number(ratioAt(facts, facts.ready), 2)}.`,
    `The last factor of ${IMPATIENT} in pressure made the wait ${say.number(facts.ready / facts.early, 2)} times as long, and the next one will cost more hours than this one. A larger pump helps there only as far as its line lets gas through; dry, clean surfaces help always.`,
  ],
  check: (facts, say) => {
    const ratio = ratioAt(facts, facts.early) / ratioAt(facts, facts.ready);
    const told = `${say.number(ratioAt(facts, facts.early), 2)} against ${say.number(ratioAt(facts, facts.ready), 2)} for each atom: ${say.number(ratio, 2)} times as many.`;
    return {
      text: `The crew fires at ${say.pressure(IMPATIENT * facts.firingPressure)} instead of waiting. How many times more foreign molecules are built into the film?`,
      choices: rangeChoices(
        ratio,
        [
          { text: 'about as many: less than twice', below: 2 },
          { text: '2 to 30 times as many', below: 30 },
          { text: 'more than 30 times as many', below: Infinity },
        ],
        {
          right: told,
          wrong: `${told} What stays grows with the pressure, and with the share of it that is water.`,
        },
      ),
    };
  },
  Picture,
  cautions: {
    title: 'Cautions for a tank under vacuum',
    cautions: [
      'The air presses with ten tonnes on each square metre of a closed tank: never lean on, heat or strike a window, and never loosen a fastener before the tank is vented.',
      'Vent slowly with clean, dry gas; a tank filled with nitrogen has no air to breathe.',
      'Filament feeds carry lethal currents and the glow discharge kilovolts: interlocks stay closed while the tank is pumped.',
    ],
  },
});
