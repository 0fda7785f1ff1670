/** What can be done with one variant. */
import { ArrowUpToLine, RotateCcw, Square, Trash2 } from 'lucide-react';
import { evaluateVariant, stopVariant } from '../../state/variants/evaluateVariants.ts';
import { deleteVariant, restoreVariant } from '../../state/variants/variantStore.ts';
import type { ComparedDesign } from './comparedDesigns.ts';

export function VariantActions({ design: { id, name } }: { readonly design: ComparedDesign }) {
  return (
    <div className="variant-actions">
      <button
        type="button"
        className="icon"
        aria-label={`Make ${name} the current design`}
        title="Make it the current design (can be undone)"
        onClick={() => restoreVariant(id)}
      >
        <ArrowUpToLine aria-hidden="true" size={16} />
      </button>
      <button
        type="button"
        className="icon"
        aria-label={`Delete ${name}`}
        title="Delete (can be brought back)"
        onClick={() => deleteVariant(id)}
      >
        <Trash2 aria-hidden="true" size={16} />
      </button>
    </div>
  );
}

/** Stands in the place of the numbers until there are some. */
export function VariantProgress({ design: { id, name, phase, share, error } }: { readonly design: ComparedDesign }) {
  const isUnderWay = phase === 'waiting' || phase === 'computing';
  const text = {
    done: '',
    waiting: 'Waits for its turn',
    computing: 'Computing',
    stopped: 'Stopped',
    failed: `Failed: ${error ?? 'no reason given'}`,
  }[phase];
  return (
    <div className="variant-progress">
      <span>{text}</span>
      {phase === 'computing' && <progress aria-label={`Computing ${name}`} max={100} value={Math.round(100 * share)} />}
      {isUnderWay ? (
        <button type="button" onClick={() => stopVariant(id)} aria-label={`Stop computing ${name}`}>
          <Square aria-hidden="true" size={14} /> Stop
        </button>
      ) : (
        <button type="button" onClick={() => evaluateVariant(id)} aria-label={`Compute ${name}`}>
          <RotateCcw aria-hidden="true" size={14} /> Compute
        </button>
      )}
    </div>
  );
}
