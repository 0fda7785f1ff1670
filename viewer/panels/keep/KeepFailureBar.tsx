/** Says once that the browser keeps nothing; the page goes on without. */
import { TriangleAlert, X } from 'lucide-react';
import { useState } from 'react';
import { useKeep } from '../../state/keep/keepStore.ts';
import { Bar } from './Bar.tsx';

export function KeepFailureBar() {
  const failure = useKeep((state) => state.failure);
  const [isClosed, setClosed] = useState(false);
  if (failure === null || isClosed) return null;
  return (
    <Bar
      label="Nothing is kept"
      icon={<TriangleAlert aria-hidden="true" size={16} />}
      isWarning
      actions={
        <button type="button" onClick={() => setClosed(true)}>
          <X aria-hidden="true" size={16} /> Close
        </button>
      }
    >
      This browser does not keep your edits ({failure}). All else works: save the design to a file before you leave.
    </Bar>
  );
}
