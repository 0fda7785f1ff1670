/** The stages as a row of links: arrow keys go along it, Enter or a digit shows a stage. */
import { useMemo, type KeyboardEvent, type MouseEvent } from 'react';
import { useGlobalKeys } from '../panels/home/useGlobalKeys.ts';
import { searchOf } from './stageAddress.ts';
import './stageRow.css';
import type { Stage } from './stages.ts';
import { showStage, useStage } from './stageStore.ts';

/** A digit shows the stage of that number; there are no more digits. */
const MOST_DIGITS = 9;

/** A click that asks for another tab or window stays the browser's. */
const isPlain = ({ button, ctrlKey, metaKey, shiftKey, altKey }: MouseEvent): boolean =>
  button === 0 && !ctrlKey && !metaKey && !shiftKey && !altKey;

function moveFocus(event: KeyboardEvent<HTMLElement>): void {
  if (event.ctrlKey || event.metaKey || event.altKey || event.shiftKey) return;
  const links = [...event.currentTarget.querySelectorAll('a')];
  const at = links.findIndex((link) => link === document.activeElement);
  const next = { ArrowRight: at + 1, ArrowLeft: at - 1, Home: 0, End: links.length - 1 }[event.key];
  if (next === undefined) return;
  event.preventDefault();
  links[(next + links.length) % links.length]?.focus();
}

interface StageLinkProps {
  readonly stages: readonly Stage[];
  readonly stage: Stage;
  readonly number: number;
}

function StageLink({ stages, stage, number }: StageLinkProps) {
  const isShown = useStage(({ key }) => key === stage.key);
  // so that it is there when the button is released; why it failed is told when it is shown
  const fetchAhead = (): void => void stage.load().catch(() => undefined);
  const show = (event: MouseEvent): void => {
    if (!isPlain(event)) return;
    event.preventDefault();
    showStage(stages, stage.key);
  };
  const digit = number <= MOST_DIGITS ? String(number) : undefined;
  return (
    <a
      href={searchOf(stages, stage.key, window.location.search) || window.location.pathname}
      aria-current={isShown ? 'page' : undefined}
      aria-keyshortcuts={digit}
      title={digit === undefined ? stage.question : `${stage.question} (key ${digit})`}
      tabIndex={isShown ? 0 : -1}
      onPointerEnter={fetchAhead}
      onClick={show}
    >
      {stage.title}
    </a>
  );
}

export function StageRow({ stages }: { readonly stages: readonly Stage[] }) {
  const bindings = useMemo(
    () =>
      stages.slice(0, MOST_DIGITS).map(({ key, title }, i) => ({
        keys: String(i + 1),
        does: `Show the stage ${title}, unless the picture of the tank has the focus`,
        run: () => showStage(stages, key),
      })),
    [stages],
  );
  useGlobalKeys('Stages', bindings);
  return (
    <nav className="stage-row" aria-label="Stages" onKeyDown={moveFocus}>
      {stages.map((stage, i) => (
        <StageLink key={stage.key} stages={stages} stage={stage} number={i + 1} />
      ))}
    </nav>
  );
}
