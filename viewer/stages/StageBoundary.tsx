/** Says honestly that a stage could not be loaded or has failed, and offers the ways out. */
import { RefreshCw, RotateCcw, TriangleAlert } from 'lucide-react';
import { Component, type ReactNode } from 'react';
import { flush } from '../state/keep/keeper.ts';
import { StageHead } from './StageHead.tsx';

interface StageBoundaryProps {
  readonly title: string;
  /** tries the stage anew */
  readonly onRetry: () => void;
  readonly children: ReactNode;
}

/** Thrown when the stage's own code does not come. */
export class StageNotLoaded extends Error {}

const reload = async (): Promise<void> => {
  await flush();
  window.location.reload();
};

export class StageBoundary extends Component<StageBoundaryProps, { readonly error: Error | null }> {
  override state = { error: null as Error | null };

  static getDerivedStateFromError(error: unknown) {
    return { error: error instanceof Error ? error : new Error(String(error)) };
  }

  override render() {
    const { error } = this.state;
    const { title, onRetry, children } = this.props;
    if (!error) return children;
    const isMissing = error instanceof StageNotLoaded;
    return (
      <div className="stage-failure">
        <StageHead />
        <div role="alert">
          <p className="stage-failure-sentence">
            <TriangleAlert aria-hidden="true" size={24} />
            {isMissing ? `The stage ${title} could not be loaded.` : `The stage ${title} has failed.`}
          </p>
          <p>
            {isMissing
              ? 'A part of the page did not come: the network may be gone, or the page may have been replaced by a newer version.'
              : 'The design is not harmed: every edit is kept, and the other stages go on.'}
          </p>
          <p className="quiet">{error.message}</p>
        </div>
        <div className="stage-failure-actions no-print">
          <button type="button" onClick={onRetry}>
            <RotateCcw aria-hidden="true" size={16} /> Try again
          </button>
          <button type="button" onClick={() => void reload()}>
            <RefreshCw aria-hidden="true" size={16} /> Load the whole page again
          </button>
        </div>
      </div>
    );
  }
}
