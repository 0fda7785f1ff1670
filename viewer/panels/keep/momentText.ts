/** Moments as people say them. */

const CLOCK = new Intl.DateTimeFormat('en-GB', { hour: '2-digit', minute: '2-digit' });
const DAY = new Intl.DateTimeFormat('en-GB', { day: 'numeric', month: 'short' });
const DAY_AND_YEAR = new Intl.DateTimeFormat('en-GB', { day: 'numeric', month: 'short', year: 'numeric' });

/**
 * "14:32" today, "3 Mar, 14:32" this year, "3 Mar 2025, 14:32" before.
 *
 * @param at ms
 * @param now ms
 */
export function momentText(at: number, now: number): string {
  const [then, today] = [new Date(at), new Date(now)];
  const clock = CLOCK.format(then);
  if (then.toDateString() === today.toDateString()) return clock;
  const day = then.getFullYear() === today.getFullYear() ? DAY : DAY_AND_YEAR;
  return `${day.format(then)}, ${clock}`;
}

/** A label at the start of a line: "height of outer" becomes "Height of outer". */
export function capitalised(label: string): string {
  return label.charAt(0).toUpperCase() + label.slice(1);
}
