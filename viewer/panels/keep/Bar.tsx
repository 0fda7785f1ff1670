/** A bar across the page: something to know, and what can be done about it. */
import type { ReactNode } from 'react';
import './keep.css';

interface BarProps {
  readonly label: string;
  readonly icon: ReactNode;
  readonly isWarning?: boolean;
  /** buttons */
  readonly actions: ReactNode;
  readonly children: ReactNode;
}

export function Bar({ label, icon, isWarning = false, actions, children }: BarProps) {
  return (
    <section className="keep-bar" aria-label={label} data-warning={isWarning || undefined}>
      {icon}
      <p role="status">{children}</p>
      <div className="keep-bar-actions">{actions}</div>
    </section>
  );
}
