/** Dirty gas. */
import { lazy } from 'react';
import type { Plant } from '../../../../engine/index.ts';
import { indexChoices, rangeChoices } from '../choices.ts';
import { arrivalsAt, COMPARED, dirtyFacts, type DirtyFacts } from '../facts/dirtyGas.ts';
import { closed } from '../lesson.ts';

const Picture = lazy(async () => ({ default: (await import('../pictures/ArrivalsPicture.tsx')).ArrivalsPicture }));

interface Facts extends DirtyFacts {
  readonly plant: Plant;
}

/** Strikes per atom that the check question asks to stay below. */
const WANTED = 0.1;
const MIDDLE = COMPARED[1];

export const dirtyGas = closed<Facts>({
  key: 'dirty-gas',
  title: 'Dirty gas',
  aim: 'Count the gas molecules that arrive with each aluminium atom while the film grows.',
  doing: 'Change the pressure and the time of the shot. Find two ways to make the film cleaner.',
  facts: async (bench, tools) => ({ plant: bench.plant, ...(await dirtyFacts(bench, tools)) }),
  predict: (facts, say) => {
    const { striking, layer } = arrivalsAt(facts.plant, facts, MIDDLE, facts.duration);
    const told = `${say.number(striking, 2)} molecules strike for each aluminium atom.`;
    return {
      text: `The film grows to ${say.thickness(facts.thickness)} in ${say.time(facts.duration)}, at ${say.pressure(MIDDLE)}. For each aluminium atom that lands, how many gas molecules strike the same place?`,
      choices: rangeChoices(
        striking,
        [
          { text: 'fewer than one for a thousand atoms', below: 1e-3 },
          { text: 'one for a thousand to one for ten', below: 0.1 },
          { text: 'about one: from a tenth to ten', below: 10 },
          { text: 'more than ten', below: Infinity },
        ],
        {
          right: told,
          wrong: `${told} A surface in this gas is struck by as many molecules as one layer holds every ${say.time(layer)}, and the film needs ${say.time(facts.duration)} to grow.`,
        },
      ),
    };
  },
  explain: (facts, say) => {
    const all = COMPARED.map((pressure) => ({ pressure, ...arrivalsAt(facts.plant, facts, pressure, facts.duration) }));
    return [
      `For each aluminium atom there strike: ${all.map(({ pressure, striking }) => `at ${say.pressure(pressure)} ${say.number(striking, 2)}`).join('; ')}.`,
      `Not all stay: water and oxygen do, nitrogen and argon do not. Taking the gas of the design (${facts.plant.vacuum.mixture ? 'a mixture' : facts.plant.vacuum.gas}), the engine reckons with ${all.map(({ pressure, staying }) => `${say.number(staying, 2)} at ${say.pressure(pressure)}`).join('; ')} that stay.`,
      `So judged, the film is ${all.map(({ pressure, band }) => `${band.name} at ${say.pressure(pressure)}`).join(', ')}. At ${say.pressure(MIDDLE)}: ${all[1]!.band.meaning}`,
      'Two things help: less gas, and a faster shot. Both at once is what a good run is made of.',
    ];
  },
  check: (facts, say) => {
    const strikes = COMPARED.map((pressure) => arrivalsAt(facts.plant, facts, pressure, facts.duration).striking);
    const good = strikes.filter((striking) => striking < WANTED).length;
    const [high, middle, low] = COMPARED.map((pressure) => say.pressure(pressure)) as [string, string, string];
    const told = `${COMPARED.map((pressure, i) => `${say.number(strikes[i]!, 2)} at ${say.pressure(pressure)}`).join(', ')}.`;
    return {
      text: `At which of the three pressures does fewer than one molecule strike for ${say.number(1 / WANTED)} atoms?`,
      choices: indexChoices(
        good,
        ['at none of them', `only at ${low}`, `at ${low} and ${middle}, not at ${high}`, 'at all three'],
        { right: told, wrong: `${told} A hundredth of the pressure brings a hundredth of the molecules.` },
      ),
    };
  },
  Picture,
});
