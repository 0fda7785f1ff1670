/** Undo and redo, as buttons that say what they would do, and as keys. */
import { Redo2, Undo2 } from 'lucide-react';
import { useEffect } from 'react';
import { useDesign } from '../state/designStore.ts';
import { redo, undo } from '../state/editDesign.ts';

/** A field with unfinished typing keeps the keys for its own letters. */
function isTyping(target: EventTarget | null): boolean {
  return target instanceof HTMLElement && target.dataset['draft'] !== undefined;
}

function onKeyDown(event: KeyboardEvent): void {
  if (!(event.ctrlKey || event.metaKey) || event.altKey || isTyping(event.target)) return;
  const key = event.key.toLowerCase();
  if (key !== 'z' && key !== 'y') return;
  event.preventDefault();
  if (key === 'y' || event.shiftKey) redo();
  else undo();
}

export function HistoryButtons() {
  const undoable = useDesign((state) => state.past.at(-1)?.label);
  const redoable = useDesign((state) => state.future.at(-1)?.label);
  useEffect(() => {
    window.addEventListener('keydown', onKeyDown);
    return () => window.removeEventListener('keydown', onKeyDown);
  }, []);
  const undoName = undoable === undefined ? 'Undo' : `Undo: ${undoable}`;
  const redoName = redoable === undefined ? 'Redo' : `Redo: ${redoable}`;
  return (
    <>
      <button
        type="button"
        className="icon"
        aria-label={undoName}
        title={undoName}
        disabled={undoable === undefined}
        onClick={undo}
      >
        <Undo2 aria-hidden="true" size={16} />
      </button>
      <button
        type="button"
        className="icon"
        aria-label={redoName}
        title={redoName}
        disabled={redoable === undefined}
        onClick={redo}
      >
        <Redo2 aria-hidden="true" size={16} />
      </button>
    </>
  );
}
