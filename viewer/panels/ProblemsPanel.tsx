/** Everything wrong with a design that was to be opened; the one on the page stays as it was. */
import { X } from 'lucide-react';
import { useId } from 'react';
import { dismissRefusal, useRefusal } from '../state/refusal.ts';
import './notices.css';

export function ProblemsPanel() {
  const id = useId();
  const refusal = useRefusal((state) => state.refusal);
  if (!refusal) return null;
  const { title, problems, missing } = refusal;
  return (
    <div className="problems" role="alert" aria-labelledby={id}>
      <div className="problems-head">
        <h2 id={id}>{title}</h2>
        <button type="button" onClick={dismissRefusal}>
          <X aria-hidden="true" size={16} /> Close
        </button>
      </div>
      <p>
        {problems.length === 1 ? 'One problem' : `${problems.length} problems`}. The design and the result on the page
        are unchanged.
      </p>
      {missing.length > 0 && (
        <p>
          Open or drop the missing {missing.length === 1 ? 'file' : 'files'} too: {missing.join(', ')}.
        </p>
      )}
      <ul>
        {problems.map(({ path, message }, i) => (
          <li key={`${i} ${path}`}>
            {path && <code>{path}</code>} {message}
          </li>
        ))}
      </ul>
    </div>
  );
}
