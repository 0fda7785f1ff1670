/** Parts of the page whose code comes when they are first asked for. */
import { useEffect, useRef, useState } from 'react';
import { refuse } from '../state/refusal.ts';

const notLoaded = (title: string, error: unknown): void =>
  refuse(title, [{ path: '', message: error instanceof Error ? error.message : String(error) }]);

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
      (error: unknown) => notLoaded(title, error),
    );
  };
  return [part?.loaded ?? null, ask];
}

/**
 * A part that is asked for by being there, such as a dialog; null until it has come.
 *
 * @param onMissing called if it does not come, after the page has said so
 */
export function useLoaded<Part>(title: string, load: () => Promise<Part>, onMissing: () => void): Part | null {
  const [part, setPart] = useState<{ readonly loaded: Part } | null>(null);
  const asked = useRef({ title, load, onMissing });
  useEffect(() => {
    let isGone = false;
    const { title: told, load: bring, onMissing: giveUp } = asked.current;
    bring().then(
      (loaded) => isGone || setPart({ loaded }),
      (error: unknown) => {
        notLoaded(told, error);
        if (!isGone) giveUp();
      },
    );
    return () => {
      isGone = true;
    };
  }, []);
  return part?.loaded ?? null;
}
