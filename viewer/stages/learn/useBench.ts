/** The tank that the learner has chosen. */
import { useMemo } from 'react';
import { useDesign } from '../../state/designStore.ts';
import { teachingBench } from './bench.ts';
import type { Bench } from './lesson.ts';
import { useLearn } from './learnStore.ts';

export function useBench(): Bench {
  const snapshot = useDesign((state) => state.current);
  const tank = useLearn((state) => state.tank);
  return useMemo(() => (tank === 'bench' ? snapshot : teachingBench()), [tank, snapshot]);
}
