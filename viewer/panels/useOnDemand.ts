/** Parts of the page whose code comes when they are first asked for. */
import { useState } from 'react';
import { refuse } from '../state/refusal.ts';

/**
 * A part, and how to ask for it. If it does not come, the page says so and the next press tries again.
 *
 * @param title what to say then, such as "The export menu cannot be loaded"
 */
export function useOnDemand<Part>(title: string, load: () => Promise<Part>): readonly [Part | null, () => void] {
  const [part, setPart] = useState<{ readonly loaded: Part } | null>(null);
  const ask = (): void => {
    load().then(
      (loaded) => setPart({ loaded }),
      (error: unknown) =>
        refuse(title, [{ path: '', message: error instanceof Error ? error.message : String(error) }]),
    );
  };
  return [part?.loaded ?? null, ask];
}
