/** The selection and the last move in words, for those who do not see the frame, and for those who do. */
import { useDesign } from '../state/designStore.ts';
import { useResult } from '../state/resultStore.ts';
import { select, useSelection } from '../state/selection.ts';
import { useUnits } from '../state/units.ts';
import { useReadOut } from './readOutStore.ts';
import { selectionText } from './sceneText.ts';

function MoveStatus() {
  const read = useReadOut((state) => state.read);
  const text = read && !read.at ? `${read.label}: ${read.text}` : '';
  const reason = read && !read.at && read.refusal !== null ? `, stops here: ${read.refusal}` : '';
  return (
    <p className="visually-hidden" role="status" aria-label="Last move">
      {text}
      {reason}
    </p>
  );
}

export function SelectionStatus() {
  const parts = useSelection((state) => state.parts);
  const design = useDesign((state) => state.current);
  const coat = useResult((state) => state.coat);
  const units = useUnits();
  const last = parts.at(-1);
  return (
    <>
      <div className="scene-selection" data-keep-clear={parts.length > 0 || undefined}>
        <p role="status" aria-label="Selection" className={parts.length === 0 ? 'visually-hidden' : undefined}>
          {selectionText(design, coat, parts, units)}
        </p>
        {parts.length === 1 && last?.kind === 'filament' && (
          <button type="button" title="Key S" onClick={() => select({ kind: 'set', index: last.set })}>
            Whole set
          </button>
        )}
      </div>
      <MoveStatus />
    </>
  );
}
