/** The newest of computed things: while one is worked out, the last one stays. */
import { useEffect, useState } from 'react';

export interface Latest<Value> {
  readonly value: Value;
  /** whether a newer one is being worked out */
  readonly isWorking: boolean;
  readonly failure: string | null;
}

/** How long a control rests before its value is worked out, ms. */
const REST = 60;

/**
 * @param first shown until the first one is there
 * @param compute a new function (useCallback) when a new thing is wanted; null for none
 */
export function useLatest<Value>(first: Value, compute: (() => Promise<Value>) | null): Latest<Value> {
  const [state, setState] = useState<Latest<Value>>({ value: first, isWorking: false, failure: null });
  useEffect(() => {
    if (!compute) return undefined;
    let isWanted = true;
    const timer = setTimeout(() => {
      setState((before) => ({ ...before, isWorking: true }));
      compute().then(
        (value) => isWanted && setState({ value, isWorking: false, failure: null }),
        (error: unknown) => {
          const failure = error instanceof Error ? error.message : String(error);
          if (isWanted) setState((before) => ({ ...before, isWorking: false, failure }));
        },
      );
    }, REST);
    return () => {
      isWanted = false;
      clearTimeout(timer);
    };
  }, [compute]);
  return state;
}
