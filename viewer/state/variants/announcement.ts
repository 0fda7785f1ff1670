/** What has just happened, for screen readers: spoken once, shown nowhere. */
import { create } from 'zustand';

export const useAnnouncement = create<{ readonly text: string; readonly count: number }>(() => ({
  text: '',
  count: 0,
}));

/** Has a sentence spoken; the same one twice is spoken twice. */
export function announce(text: string): void {
  useAnnouncement.setState(({ count }) => ({ text, count: count + 1 }));
}
