/** Says that another tab has the design, and offers the two ways out. */
import { AppWindow } from 'lucide-react';
import { useKeep } from '../../state/keep/keepStore.ts';
import { takeOver, workOnCopy } from '../../state/keep/tenure.ts';
import { Bar } from './Bar.tsx';

export function TabBar() {
  const tenure = useKeep((state) => state.tenure);
  const isPending = useKeep((state) => state.isPending);
  if (tenure !== 'elsewhere' && tenure !== 'lost') return null;
  return (
    <Bar
      label="Open in another tab"
      icon={<AppWindow aria-hidden="true" size={16} />}
      isWarning
      actions={
        <>
          <button type="button" onClick={workOnCopy}>
            Work on a copy
          </button>
          <button type="button" onClick={() => void takeOver()}>
            Take over here
          </button>
        </>
      }
    >
      {tenure === 'elsewhere' ? 'This design is open in another tab.' : 'Another tab has taken this design over.'} Here
      it can be looked at, not edited.{isPending && ' The last edit made here is not kept yet.'}
    </Bar>
  );
}
