/** Views of the same room, one at a time. Only the chosen one is there, so the others cost nothing. */
import { Suspense, useId, type KeyboardEvent, type ReactNode } from 'react';
import './tabs.css';

export interface Tab<Id extends string> {
  readonly id: Id;
  readonly label: string;
  readonly content: () => ReactNode;
}

interface TabsProps<Id extends string> {
  /** what the views have in common, for screen readers */
  readonly label: string;
  readonly tabs: readonly Tab<Id>[];
  readonly chosen: Id;
  readonly onChoose: (id: Id) => void;
  /** controls beside the tabs */
  readonly children?: ReactNode;
}

/** Steps to the tab that a key leads to. */
const STEPS: Readonly<Record<string, number>> = { ArrowRight: 1, ArrowLeft: -1 };

export function Tabs<Id extends string>({ label, tabs, chosen, onChoose, children }: TabsProps<Id>) {
  const id = useId();
  const onKeyDown = (event: KeyboardEvent<HTMLDivElement>): void => {
    const step = STEPS[event.key];
    const at = tabs.findIndex((tab) => tab.id === chosen);
    const next =
      event.key === 'Home' ? tabs[0] : event.key === 'End' ? tabs.at(-1) : step && tabs.at((at + step) % tabs.length);
    if (!next) return;
    event.preventDefault();
    onChoose(next.id);
    document.getElementById(`${id}-${next.id}`)?.focus();
  };
  return (
    <div className="tabs">
      <div className="tabs-head">
        <div role="tablist" aria-label={label} onKeyDown={onKeyDown}>
          {tabs.map((tab) => (
            <button
              key={tab.id}
              type="button"
              role="tab"
              id={`${id}-${tab.id}`}
              aria-selected={tab.id === chosen}
              aria-controls={`${id}-view`}
              tabIndex={tab.id === chosen ? 0 : -1}
              onClick={() => onChoose(tab.id)}
            >
              {tab.label}
            </button>
          ))}
        </div>
        {children}
      </div>
      <div role="tabpanel" id={`${id}-view`} aria-labelledby={`${id}-${chosen}`} className="tabs-view">
        <Suspense fallback={<p className="quiet">Loading…</p>}>
          {tabs.find((tab) => tab.id === chosen)?.content()}
        </Suspense>
      </div>
    </div>
  );
}
