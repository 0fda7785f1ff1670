/** Who may write a design: decisions about leases, without a clock or a database of their own. */
import type { Lease } from './records.ts';

/** Between two signs of life, ms. */
export const BEAT = 2000;
/** A tab that shows no sign of life for so long, and answers no question, is gone, ms. */
export const STALE = 6000;
/** How long a tab may take to answer, ms. */
export const ANSWER = 400;

/** `free`: take it; `ask`: ask the holder first; `taken`: leave it. */
export type Claim = 'free' | 'ask' | 'taken';

/**
 * What a tab may do about a lease.
 *
 * @param answered whether the holder has said that it lives; null if it was not asked yet
 */
export function judgeLease(lease: Lease | undefined, me: string, now: number, answered: boolean | null): Claim {
  if (!lease || lease.holder === me) return 'free';
  if (answered === null) return 'ask';
  // a clock that was set back makes a sign of life lie in the future: it proves nothing
  const isFresh = lease.beat <= now && now - lease.beat < STALE;
  return answered || isFresh ? 'taken' : 'free';
}

/** Whether a tab may write: nobody holds the design, or the tab itself. */
export function mayWrite(lease: Lease | undefined, me: string): boolean {
  return !lease || lease.holder === me;
}
