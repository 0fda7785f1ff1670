/** The handles of the part that was selected last. */
import { useMemo } from 'react';
import { useDesign } from '../state/designStore.ts';
import { useSelection } from '../state/selection.ts';
import { handlesOf, type Handle } from './handles.ts';
import { obstacleOrder } from './obstacleOrder.ts';
import { useRingAngle } from './ringAngle.ts';

/** The handles as they are now, outside React. */
export function currentHandles(): readonly Handle[] {
  const part = useSelection.getState().parts.at(-1);
  const { current } = useDesign.getState();
  return part ? handlesOf(current, part, obstacleOrder(current.file), useRingAngle.getState().angle) : [];
}

export function useHandles(): readonly Handle[] {
  const part = useSelection((state) => state.parts.at(-1));
  const design = useDesign((state) => state.current);
  const angle = useRingAngle((state) => state.angle);
  return useMemo(() => (part ? handlesOf(design, part, obstacleOrder(design.file), angle) : []), [part, design, angle]);
}
