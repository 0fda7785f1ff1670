/** The inverse square and the two cosines. */
import { lazy } from 'react';
import { indexChoices } from '../choices.ts';
import { fallTo, thinEdgeFacts, type ThinEdge } from '../facts/thinEdge.ts';
import { closed } from '../lesson.ts';

const Picture = lazy(async () => ({ default: (await import('../pictures/SectionPicture.tsx')).SectionPicture }));

/** A fall counts as the bare square of the distances if it is no further from it than this share. */
const SAME = 0.1;

/** Which of the answers "as the distance", "as its square", "more than that" is right; -1 for less than the square. */
function kindOfFall(facts: ThinEdge): number {
  const { total, distance } = fallTo(facts, facts.far);
  if (total > distance * (1 + SAME)) return 2;
  return total > distance * (1 - SAME) ? 1 : 0;
}

export const thinEdge = closed<ThinEdge>({
  key: 'thin-edge',
  title: 'Why the far side is thin',
  aim: 'See how distance and two angles share the vapour of one filament out over the mirror.',
  doing:
    'Move the place along the mirror and watch the three factors. Find the place where the angle of arrival costs half.',
  facts: async ({ plant }) => thinEdgeFacts(plant),
  predict: (facts, say) => {
    const { far, near, distance } = facts;
    const times = distance[far]! / distance[near]!;
    const { total } = fallTo(facts, far);
    return {
      text: `The far end of the mirror is ${say.number(times, 2)} times as far from ${facts.filamentName} as the place that it coats most. How much thinner is its coat there?`,
      choices: indexChoices(
        kindOfFall(facts),
        [
          `less than ${say.number(times ** 2, 2)} times thinner`,
          `${say.number(times ** 2, 2)} times thinner, as the square of the distance`,
          `more than ${say.number(times ** 2, 2)} times thinner`,
        ],
        {
          right: `It is ${say.number(total, 2)} times thinner.`,
          wrong: `It is ${say.number(total, 2)} times thinner. The same vapour spreads over an area that grows as the square of the distance, which gives ${say.number(times ** 2, 2)}; and the two angles change as well.`,
        },
      ),
    };
  },
  explain: (facts, say) => {
    const { total, distance, arrival, emission } = fallTo(facts, facts.far);
    const { all } = facts;
    const [least, most] = [Math.min(...all), Math.max(...all)];
    return [
      `From ${say.length(facts.distance[facts.near]!)} to ${say.length(facts.distance[facts.far]!)}, the distance alone makes the coat ${say.number(distance, 2)} times thinner: this is the inverse square.`,
      `The vapour meets the mirror at a slant, so that it covers more glass: the cosine of arrival falls from ${say.number(facts.arrival[facts.near]!, 2)} to ${say.number(facts.arrival[facts.far]!, 2)}, a factor of ${say.number(arrival, 2)}. The filament's own law of emission changes by a factor of ${say.number(emission, 2)}. Together with the distance that makes ${say.number(distance * arrival * emission, 2)}; the engine, which adds up every loop and every shadow, finds ${say.number(total, 2)}.`,
      `No place is fed by one filament alone. Adding all of them gives ${say.thickness(least)} to ${say.thickness(most)} along this line: what is far from most filaments, or meets them at a slant, stays thin.`,
    ];
  },
  check: (facts, say) => {
    const { distance, arrival, emission } = fallTo(facts, facts.far);
    const causes = [distance, arrival, emission];
    const told = `Distance costs a factor of ${say.number(distance, 2)}, the angle of arrival ${say.number(arrival, 2)}, the angle of emission ${say.number(emission, 2)}.`;
    return {
      text: 'Which of the three takes most away at the far end?',
      choices: indexChoices(
        causes.indexOf(Math.max(...causes)),
        ['the distance', 'the angle at which the vapour arrives', 'the angle at which it leaves the filament'],
        { right: told, wrong: `${told} Set the place to the far end and read the bars again.` },
      ),
    };
  },
  Picture,
});
