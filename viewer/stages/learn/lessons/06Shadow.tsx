/** A shadow. */
import { lazy } from 'react';
import { indexChoices, rangeChoices } from '../choices.ts';
import { deepest, HALF, shadowWidth, HIGH, LOW, shadowFacts, type ShadowFacts } from '../facts/shadow.ts';
import { closed } from '../lesson.ts';

const Picture = lazy(async () => ({ default: (await import('../pictures/ShadowPicture.tsx')).ShadowPicture }));

/** Widths that differ by less than this share count as the same. */
const SAME = 0.1;

function howWide({ low, high }: ShadowFacts): number {
  const ratio = shadowWidth(high) / shadowWidth(low);
  if (ratio > 1 + SAME) return 0;
  return ratio < 1 - SAME ? 1 : 2;
}

export const shadow = closed<ShadowFacts>({
  key: 'shadow',
  title: 'A shadow',
  aim: 'Find out what a bracket, a cable or a baffle in the way does to the coat behind it.',
  doing: 'Move the plate between mirror and filament, and change its width. Switch between all filaments and the one.',
  facts: shadowFacts,
  predict: ({ half, firingCount, filamentName }, say) => {
    const missing = deepest(half.clear, half.shaded);
    const told = `At the darkest place ${say.percent(missing)} of the coat is missing.`;
    return {
      text: `A plate ${say.length(half.plate.diameter)} wide hangs half way between ${filamentName} and your mirror, while ${firingCount === 1 ? 'that one filament fires' : `all ${firingCount} filaments fire`}. How much of the coat is missing at the darkest place behind it?`,
      choices: rangeChoices(
        missing,
        [
          { text: 'less than a tenth', below: 0.1 },
          { text: 'between a tenth and a half', below: 0.5 },
          { text: 'between a half and nine tenths', below: 0.9 },
          { text: 'nearly all', below: Infinity },
        ],
        {
          right: told,
          wrong: `${told} A plate hides each filament from another part of the mirror; a place goes bare only where it hides all that feed it.`,
        },
      ),
    };
  },
  explain: ({ half, low, high, firingCount }, say) => [
    `Vapour flies straight, so a shadow has the shape that a lamp would give it. The shadow of the plate from the one filament is ${say.length(shadowWidth(half))} wide when the plate hangs half way up, ${say.length(shadowWidth(low))} when it hangs near the mirror and ${say.length(shadowWidth(high))} when it hangs near the filament.`,
    `At the darkest place on the line ${say.percent(deepest(half.oneClear, half.oneShaded))} of this filament's coat is missing, and ${say.percent(deepest(half.clear, half.shaded))} of the whole coat${firingCount > 1 ? `, because the other ${firingCount - 1} filaments look around the plate` : ''}.`,
    `Near the mirror the same plate takes ${say.percent(deepest(low.clear, low.shaded))} of the whole coat at the worst place, near the filament ${say.percent(deepest(high.clear, high.shaded))}: what lies close to the glass hides it from every filament at once, over a small patch.`,
  ],
  check: (facts, say) => {
    const told = `Near the mirror (${say.percent(LOW)} of the way up) its shadow is ${say.length(shadowWidth(facts.low))} wide, near the filament (${say.percent(HIGH)}) ${say.length(shadowWidth(facts.high))} wide.`;
    return {
      text: `The plate moves from ${say.percent(LOW)} to ${say.percent(HIGH)} of the way toward the filament. Its shadow from this filament becomes …`,
      choices: indexChoices(howWide(facts), ['wider', 'narrower', 'neither'], {
        right: told,
        wrong: `${told} Half way, at ${say.percent(HALF)}, it is ${say.length(shadowWidth(facts.half))}.`,
      }),
    };
  },
  Picture,
});
