/** The value that a handle is being moved to, and why it goes no further. */
import { create } from 'zustand';

export interface ReadOut {
  readonly label: string;
  readonly text: string;
  readonly refusal: string | null;
  /** of the pointer, px in the window; null after a drag, and by keyboard */
  readonly at: readonly [number, number] | null;
}

export const useReadOut = create<{ readonly read: ReadOut | null }>(() => ({ read: null }));
