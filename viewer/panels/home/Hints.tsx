/** One hint at a time for the first minute with the page. */
import { Lightbulb, X } from 'lucide-react';
import { useEffect } from 'react';
import { finishAllHints, finishHint, followHints, HINTS, nextHint, useHints } from './hintStore.ts';
import './home.css';

export function Hints() {
  const done = useHints((state) => state.done);
  useEffect(followHints, []);
  const hint = nextHint(done);
  return (
    <div className="hints" role="status" aria-label="Hint">
      {hint && (
        <div className="hint">
          <Lightbulb aria-hidden="true" size={16} />
          <p>
            {hint.text}{' '}
            <small>
              {HINTS.indexOf(hint) + 1} of {HINTS.length}
            </small>
          </p>
          <button type="button" onClick={() => finishHint(hint.id)}>
            Next
          </button>
          <button
            type="button"
            className="icon"
            aria-label="Dismiss all hints"
            title="No more hints; the keys dialog (?) shows them again"
            onClick={finishAllHints}
          >
            <X aria-hidden="true" size={16} />
          </button>
        </div>
      )}
    </div>
  );
}
