/** The last states of the design, each of which can be brought back. */
import { Check } from 'lucide-react';
import { useCallback } from 'react';
import { listStates } from '../../state/keep/database.ts';
import { useKeep } from '../../state/keep/keepStore.ts';
import { restore } from '../../state/keep/restore.ts';
import { MAX_STATES } from '../../state/keep/retention.ts';
import type { KeptState } from '../../state/keep/records.ts';
import { capitalised, momentText } from './momentText.ts';
import { useKept } from './useKept.ts';
import './keep.css';

interface StateRowProps {
  readonly state: KeptState;
  readonly isPresent: boolean;
  readonly isDisabled: boolean;
}

function StateRow({ state: { designId, at, label, value, name }, isPresent, isDisabled }: StateRowProps) {
  const moment = momentText(at, Date.now());
  const go = (): void => void restore(designId, `restore ${moment} of`, at);
  return (
    <li>
      <button
        type="button"
        aria-current={isPresent || undefined}
        disabled={isDisabled && !isPresent}
        onClick={isPresent ? undefined : go}
        title={isPresent ? 'On the page now' : `Restore “${name}” as it was at ${moment}`}
      >
        <span className="keep-label">
          {capitalised(label)}
          {value !== null && <span className="keep-value"> {value}</span>}
        </span>
        {isPresent && <Check aria-label="on the page now" size={16} />}
        <time className="number" dateTime={new Date(at).toISOString()}>
          {moment}
        </time>
      </button>
    </li>
  );
}

export function HistoryPanel() {
  const designId = useKeep((state) => state.designId);
  const present = useKeep((state) => state.at);
  const isDisabled = useKeep((state) => state.tenure === 'elsewhere' || state.tenure === 'lost');
  const read = useCallback(async () => (designId === null ? [] : listStates(designId)), [designId]);
  const states = useKept(read, true) ?? [];
  return (
    <section className="panel keep-history no-print" aria-labelledby="keep-history-title">
      <h2 id="keep-history-title">History</h2>
      {states.length === 0 ? (
        <p className="quiet">Every edit is kept here, the last {MAX_STATES} of each design.</p>
      ) : (
        <ol className="keep-list" aria-labelledby="keep-history-title">
          {states.map((state) => (
            <StateRow key={state.at} state={state} isPresent={state.at === present} isDisabled={isDisabled} />
          ))}
        </ol>
      )}
    </section>
  );
}
