/** What each factor adds to or takes from a place, as bars that sum to the difference. */
import type { Decomposition } from '../../engine/explain/decompose.ts';
import { FACTOR_NAMES } from '../../engine/explain/whyStory.ts';
import { signed, started } from '../../engine/explain/words.ts';
import { label, n, path, picture, WIDTH } from './drawing.ts';

const ROW = 21;
/** Shares below this are written as zero. */
const LEAST = 5e-4;
const TOP = 6;
/** Room for names on the left, and for figures at either end of a bar. */
const NAMES = 142;
const FIGURES = 60;

/**
 * Bars of the factors, and the sum.
 *
 * @param hasGas whether collisions with gas were reckoned with; else their row says that they were left out
 */
export function factorBars({ factors, difference, from }: Decomposition, hasGas: boolean): string {
  const change = difference / from.deposit;
  const rows = [
    ...factors.map(({ factor, share }) => ({
      name: started(FACTOR_NAMES[factor]),
      share,
      note: factor === 'gas' && !hasGas ? 'left out' : undefined,
      kind: share < 0 ? 'takes' : 'adds',
    })),
    { name: 'Together', share: change, note: undefined, kind: 'sum' },
  ];
  const [low, high] = [Math.min(0, ...rows.map(({ share }) => share)), Math.max(0, ...rows.map(({ share }) => share))];
  const span = high - low || 1;
  const [left, right] = [NAMES + (low < 0 ? FIGURES : 4), WIDTH - FIGURES];
  const x = (value: number): number => left + ((value - low) / span) * (right - left);
  const body = rows.flatMap(({ name, share, note, kind }, i) => {
    const y = TOP + ROW * i + (kind === 'sum' ? 5 : 0);
    const [from0, to] = [Math.min(x(0), x(share)), Math.max(x(0), x(share))];
    const isLeft = share < 0;
    const text = note ?? (Math.abs(share) < LEAST ? '0 %' : signed(share));
    return [
      label(0, y + 14, name, { kind: kind === 'sum' ? 'strong' : '' }),
      `<rect class="bar ${kind}" x="${n(from0)}" y="${n(y + 3)}" width="${n(Math.max(0.1, to - from0))}" height="14"/>`,
      label(isLeft ? from0 - 5 : to + 5, y + 14, text, {
        anchor: isLeft ? 'end' : 'start',
        kind: note === undefined ? 'strong' : 'quiet',
      }),
    ];
  });
  const bottom = TOP + ROW * rows.length + 5;
  const told = rows.map(({ name, share }) => `${name} ${signed(share)}`).join(', ');
  return picture(bottom + 4, `Shares of the difference: ${told}`, [
    ...body,
    path(`M0 ${n(TOP + ROW * factors.length + 3)}H${WIDTH}`, 'rule'),
    path(`M${n(x(0))} ${TOP}V${n(bottom)}`, 'zero'),
  ]);
}
