/** A control with its label, its help and the reason why a value was refused. */
import type { ReactNode } from 'react';

interface ExplainedProps {
  /** of the control; its help is `${id}-help`, its refusal `${id}-refusal` */
  readonly id: string;
  readonly label: string;
  readonly help: string;
  readonly refusal: string | null;
  readonly children: ReactNode;
}

export function Explained({ id, label, help, refusal, children }: ExplainedProps) {
  return (
    <div className="plant-field" data-help={help}>
      {label !== '' && <label htmlFor={id}>{label}</label>}
      {children}
      <span id={`${id}-help`} className="visually-hidden">
        {help}
      </span>
      <p id={`${id}-refusal`} className="field-refusal" aria-live="polite">
        {refusal}
      </p>
    </div>
  );
}
