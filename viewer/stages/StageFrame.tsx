/** The frame that all stages share: the sentence first, then the picture, then the numbers. */
import type { ReactNode } from 'react';
import { Later } from './Later.tsx';
import './stageFrame.css';
import { StageHead } from './StageHead.tsx';

interface StageFrameProps {
  /** the answer in plain words: a VerdictLine */
  readonly sentence: ReactNode;
  /** fills the middle: it is given a height and must not ask for more */
  readonly picture: ReactNode;
  /** panels with tables, one under the other; the column scrolls */
  readonly numbers: ReactNode;
  /** what the numbers are, for screen readers */
  readonly numbersLabel: string;
  /** what is set in this stage, in a column before the picture; the last panel takes the room that is left and scrolls */
  readonly aside?: ReactNode;
}

export function StageFrame({ sentence, picture, numbers, numbersLabel, aside }: StageFrameProps) {
  return (
    <div className="stage-frame" data-aside={aside !== undefined || undefined}>
      <StageHead>{sentence}</StageHead>
      {aside !== undefined && <div className="stage-aside no-print">{aside}</div>}
      <div className="stage-picture">{picture}</div>
      {/* it scrolls, so the keyboard must reach it */}
      <div className="stage-numbers" role="region" aria-label={numbersLabel} tabIndex={0}>
        <Later>{numbers}</Later>
      </div>
    </div>
  );
}
