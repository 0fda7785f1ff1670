/** What the page is busy with, and what to do when a result did not come. */
import { RotateCcw, X } from 'lucide-react';
import { useId } from 'react';
import { cancel, tryAgain, useResult } from '../state/resultStore.ts';
import './notices.css';

const sentence = (text: string): string => (/[.!?]$/.test(text) ? text : `${text}.`);

export function ComputeNotice() {
  const id = useId();
  const { phase, isSlow, share, error, coat } = useResult();
  if (phase === 'computing' && isSlow) {
    const done = Math.round(100 * share);
    return (
      <div className="notice running">
        <label htmlFor={id}>Computing the coat</label>
        <progress id={id} max={100} value={done} />
        <span className="number">{done} %</span>
        <button type="button" onClick={cancel}>
          <X aria-hidden="true" size={16} /> Cancel
        </button>
      </div>
    );
  }
  if (phase !== 'cancelled' && phase !== 'failed') return null;
  const kept = coat ? ' The picture and the numbers still show the last result, from before this edit.' : '';
  return (
    <div className="notice" role={phase === 'failed' ? 'alert' : undefined}>
      <span>
        {phase === 'cancelled' ? 'Cancelled.' : `The evaluation failed: ${sentence(error ?? 'no reason given')}`}
        {kept}
      </span>
      <button type="button" onClick={tryAgain}>
        <RotateCcw aria-hidden="true" size={16} /> {phase === 'cancelled' ? 'Compute now' : 'Try again'}
      </button>
    </div>
  );
}
