/** What the database holds, read again after each writing. */
import { useEffect, useState } from 'react';
import { useKeep } from '../../state/keep/keepStore.ts';

/**
 * The answer of a reading; null before the first one, or if the database fails.
 *
 * @param read must be the same function as long as it reads the same
 * @param isWanted whether anybody looks at it
 */
export function useKept<T>(read: () => Promise<T>, isWanted: boolean): T | null {
  const revision = useKeep((state) => state.revision);
  const [kept, setKept] = useState<{ readonly read: () => Promise<T>; readonly value: T } | null>(null);
  useEffect(() => {
    if (!isWanted) return undefined;
    let isCurrent = true;
    read().then(
      (value) => isCurrent && setKept({ read, value }),
      () => isCurrent && setKept(null), // the bar tells about a failing database
    );
    return () => {
      isCurrent = false;
    };
  }, [read, isWanted, revision]);
  return kept?.read === read ? kept.value : null;
}
