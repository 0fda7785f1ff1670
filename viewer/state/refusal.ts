/** Why something could not be opened or saved, for the panel of problems. */
import { create } from 'zustand';
import type { Problem } from '../../engine/index.ts';

export interface Refusal {
  readonly title: string;
  readonly problems: readonly Problem[];
  /** files that the design names and that were not there */
  readonly missing: readonly string[];
}

export const useRefusal = create<{ readonly refusal: Refusal | null }>(() => ({ refusal: null }));

/** Shows why; what was there before stays as it was. */
export function refuse(title: string, problems: readonly Problem[], missing: readonly string[] = []): void {
  useRefusal.setState({ refusal: { title, problems, missing } });
}

/** Closes the panel of problems. */
export function dismissRefusal(): void {
  useRefusal.setState({ refusal: null });
}
