/** The handles of what is selected. */
import { useMemo } from 'react';
import { useDesign } from '../state/designStore.ts';
import { useSelection } from '../state/selection.ts';
import { handlesOfAll } from './groupHandles.ts';
import type { Handle } from './handles.ts';
import { obstacleOrder } from './obstacleOrder.ts';
import { useRingAngle } from './ringAngle.ts';

/** The handles as they are now, outside React. */
export function currentHandles(): readonly Handle[] {
  const { parts } = useSelection.getState();
  const { current } = useDesign.getState();
  return handlesOfAll(current, parts, obstacleOrder(current.file), useRingAngle.getState().angle);
}

export function useHandles(): readonly Handle[] {
  const parts = useSelection((state) => state.parts);
  const design = useDesign((state) => state.current);
  const angle = useRingAngle((state) => state.angle);
  return useMemo(() => handlesOfAll(design, parts, obstacleOrder(design.file), angle), [parts, design, angle]);
}
