/** The head of a stage: its sentence, what the page is busy with, and what is wrong with a design that was to be opened. */
import type { ReactNode } from 'react';
import { ComputeNotice } from '../panels/ComputeNotice.tsx';
import { ProblemsPanel } from '../panels/ProblemsPanel.tsx';
import './stageFrame.css';

export function StageHead({ children }: { readonly children?: ReactNode }) {
  return (
    <div className="stage-head">
      {children}
      <ComputeNotice />
      <ProblemsPanel />
    </div>
  );
}
