/** Where the numbers beside a colour bar stand. */
import { shownValue, type MapSubject } from './mapSubject.ts';
import { decimalsOf, shareOn } from './valueScale.ts';

export interface BarText {
  readonly text: string;
  /** 0 at the low end, 1 at the high one: of the value, and of the text where others crowd it */
  readonly share: number;
  readonly textShare: number;
}

export interface BarTexts {
  readonly ticks: readonly BarText[];
  readonly marks: readonly BarText[];
  /** names of the marks that lie off the scale */
  readonly beyond: readonly string[];
}

/** Moves texts apart until each has its room; they keep their order and stay on the bar. */
function spread(shares: readonly number[], room: number): number[] {
  const order = shares.map((_, i) => i).toSorted((p, q) => shares[p]! - shares[q]!);
  const placed = [...shares];
  order.forEach((i, k) => {
    if (k > 0) placed[i] = Math.max(placed[i]!, placed[order[k - 1]!]! + room);
  });
  for (let k = order.length - 1; k >= 0; k--) {
    const most = k === order.length - 1 ? 1 : placed[order[k + 1]!]! - room;
    placed[order[k]!] = Math.min(placed[order[k]!]!, most);
  }
  return placed;
}

/**
 * Ticks and marks of a subject's colour bar.
 *
 * @param room share of the bar's length that a line of text takes
 */
export function barTexts(subject: MapSubject, room: number): BarTexts {
  const { scale, barMarks } = subject;
  const decimals = decimalsOf(scale.ticks);
  const isOn = ({ value }: { readonly value: number }): boolean => value >= scale.low && value <= scale.high;
  const on = barMarks.filter(isOn);
  const shares = on.map(({ value }) => shareOn(scale, value));
  const spreadShares = spread(shares, room);
  return {
    ticks: scale.ticks.map((tick) => {
      const share = shareOn(scale, tick);
      return { text: shownValue(subject, tick, decimals), share, textShare: share };
    }),
    marks: on.map(({ text }, i) => ({ text, share: shares[i]!, textShare: spreadShares[i]! })),
    beyond: barMarks.filter((mark) => !isOn(mark)).map(({ text }) => text),
  };
}
