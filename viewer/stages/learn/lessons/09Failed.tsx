/** A failed filament. */
import { lazy } from 'react';
import { indexChoices, rangeChoices } from '../choices.ts';
import { failedFacts, type FailedFacts } from '../facts/failed.ts';
import { closed } from '../lesson.ts';

const Picture = lazy(async () => ({ default: (await import('../pictures/FailedPicture.tsx')).FailedPicture }));

/** Uniformities that differ by less than this share of each other count as the same. */
const SAME = 0.02;

function afterRefill({ full, failed, refilled }: FailedFacts): number {
  const [before, after, filled] = [full, failed, refilled].map(({ statistics }) => statistics.uniformity.value) as [
    number,
    number,
    number,
  ];
  if (Math.abs(filled / before - 1) < SAME) return 0;
  return Math.abs(filled / after - 1) < SAME ? 1 : 2;
}

export const failed = closed<FailedFacts>({
  key: 'failed',
  title: 'A failed filament',
  aim: 'See what is missing from the coat when a filament or a whole feed does not fire.',
  doing: 'Choose another filament, then let its whole feed fail. Look for the place that suffers most.',
  facts: failedFacts,
  predict: ({ count, coldName, deepest, isBorrowed, failed: coat, full }, say) => {
    const mean = 1 - coat.statistics.mean.value / full.statistics.mean.value;
    const told = `On average ${say.percent(mean)} is missing, at the worst place ${say.percent(deepest)}.`;
    const even = 1.5 / count;
    const more = Math.min(5 / count, (1 + even) / 2);
    return {
      text: `${isBorrowed ? `This tank has too few filaments to lose one, so it is lent a ring of ${count}. ` : ''}One filament of ${count}, ${coldName}, does not fire. How much of the coat is missing at the place that suffers most?`,
      choices: rangeChoices(
        deepest,
        [
          { text: `about its share of the filaments: at most ${say.percent(even)}`, below: even },
          { text: `more than that, up to ${say.percent(more)}`, below: more },
          { text: 'still more, but something is left', below: 0.99 },
          { text: 'all of it', below: Infinity },
        ],
        {
          right: told,
          wrong: `${told} A filament feeds what lies near it far more than the rest; the other filaments fill in only what they can reach.`,
        },
      ),
    };
  },
  explain: ({ failed: coat, full, deepest, feedFailed, feedSize, feedDeepest, count }, say) => [
    `With all ${count} filaments the coat is ${say.thickness(full.statistics.mean.value)} on average and ±${say.percent(full.statistics.uniformity.value)} even. Without the one it is ${say.thickness(coat.statistics.mean.value)} and ±${say.percent(coat.statistics.uniformity.value)}; at the worst place ${say.percent(deepest)} is missing.`,
    feedFailed
      ? `The ${feedSize} filaments of its feed stand side by side. If the feed fails, the hole is deeper than ${feedSize} holes far apart: ${say.percent(feedDeepest)} is missing at the worst place, and the thinnest coat is ${say.thickness(feedFailed.statistics.minimum.value)}. This is why neighbours may be wired to different feeds.`
      : 'If neighbours fail together, their holes add up at the same place: this is why neighbours may be wired to different feeds.',
    `The coat is a sum over filaments. So the engine needs no new flight of vapour to answer this: it leaves one term out.`,
  ],
  check: (facts, say) => {
    const [before, filled] = [facts.full, facts.refilled].map(({ statistics }) => statistics.uniformity.value) as [
      number,
      number,
    ];
    const told = `The mean comes back to ${say.thickness(facts.refilled.statistics.mean.value)} of ${say.thickness(facts.full.statistics.mean.value)}, but the evenness is ±${say.percent(filled)}, against ±${say.percent(before)} with all filaments.`;
    return {
      text: 'The crew hangs the missing aluminium on the other filaments, to each in proportion to what it carries, and the filament stays cold. What becomes of the evenness?',
      choices: indexChoices(
        afterRefill(facts),
        [
          'it is as good as with all filaments',
          'it stays as poor as without the filament',
          'it is neither the one nor the other',
        ],
        {
          right: told,
          wrong: `${told} More on all other filaments makes the whole coat thicker by the same factor, the hole included.`,
        },
      ),
    };
  },
  Picture,
  cautions: {
    title: 'Cautions for a filament that did not fire',
    cautions: [
      'A feed may be live although nothing glows: isolate, lock and earth it, and prove it dead, before a hand goes near.',
      'Let the tank reach the pressure of the room before a door is opened; filaments and clamps stay hot long after.',
    ],
  },
});
