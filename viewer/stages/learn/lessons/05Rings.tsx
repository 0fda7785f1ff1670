/** One filament, a ring, two rings. */
import { lazy } from 'react';
import { indexChoices } from '../choices.ts';
import { LAYOUTS, LAYOUT_NAMES, leastOf, ringsFacts, type Rings } from '../facts/rings.ts';
import { closed } from '../lesson.ts';

const Picture = lazy(async () => ({ default: (await import('../pictures/RingsPicture.tsx')).RingsPicture }));

const NAMES = LAYOUTS.map((layout) => LAYOUT_NAMES[layout]);

export const rings = closed<Rings>({
  key: 'rings',
  title: 'One filament, a ring, two rings',
  aim: 'Learn why filaments stand in rings, and what a second ring is for.',
  doing: 'Choose an arrangement and make its ring wider and narrower. Look for the most even coat that each can lay.',
  facts: ringsFacts,
  predict: (facts, say) => {
    const { coats, room } = facts;
    const told = LAYOUTS.map(
      (layout) => `${LAYOUT_NAMES[layout]}: ±${say.percent(coats[layout].statistics.uniformity.value)}`,
    ).join('; ');
    return {
      text: `The same filaments, three ways: one over the middle of your mirror; ${room.outerCount} in a ring ${say.length(room.first)} across; or this ring and ${room.innerCount} more in one of half its width. Which coat is the most even?`,
      choices: indexChoices(
        leastOf(facts, ({ statistics }) => statistics.uniformity.value),
        NAMES,
        {
          right: `Spread of the three: ${told}.`,
          wrong: `In this tank it is another one; ${told}. Each ring fills in where the other is thin only if its width suits the mirror.`,
        },
      ),
    };
  },
  explain: ({ coats, room }, say) => {
    const { one, ring, rings: two } = coats;
    const centre = ({ profile }: typeof one): number => profile.mean[0]!;
    const rim = ({ profile }: typeof one): number => profile.mean.at(-1)!;
    return [
      `A single filament coats most what lies opposite it: at the rim its coat is ${say.percent(rim(one) / centre(one))} as thick as nearest the middle, and it spreads ±${say.percent(one.statistics.uniformity.value)}.`,
      `A ring ${say.length(room.first)} across turns this round: rim over middle becomes ${say.percent(rim(ring) / centre(ring))}, the spread ±${say.percent(ring.statistics.uniformity.value)}. A second ring of half the width gives ${say.percent(rim(two) / centre(two))} and ±${say.percent(two.statistics.uniformity.value)}.`,
      'The coat of several filaments is the sum of their coats, each times its charge. So a layout is tuned by where the rings stand and by how much each carries; more filaments on one ring only smooth the ripple around it.',
    ];
  },
  check: (facts, say) => {
    const { coats } = facts;
    const told = LAYOUTS.map(
      (layout) => `${LAYOUT_NAMES[layout]}: ${say.percent(coats[layout].statistics.collection.value)}`,
    ).join('; ');
    return {
      text: 'Evenness has a price. Which arrangement brings the largest share of its aluminium onto the mirror?',
      choices: indexChoices(
        leastOf(facts, ({ statistics }) => -statistics.collection.value),
        NAMES,
        {
          right: `Yes: the nearer a filament stands to the middle, the more of its vapour meets glass (${told}).`,
          wrong: `What leaves a filament near the wall lands on the wall (${told}).`,
        },
      ),
    };
  },
  Picture,
});
