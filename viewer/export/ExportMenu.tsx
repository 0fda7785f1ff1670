/** Opens a list of what can be saved of the coat, each with the kinds of file. */
import { ChevronDown, Download } from 'lucide-react';
import { useEffect, useId, useRef, useState, type FocusEvent, type KeyboardEvent } from 'react';
import type { Coat } from '../../engine/index.ts';
import type { SharedRange } from '../format/mapScale.ts';
import { useMapView } from '../state/mapView.ts';
import { useUnits } from '../state/units.ts';
import './export.css';
import { exportGroups, type ExportAction, type ExportGroup } from './exportActions.ts';
import { exportName, saveFile } from './saveFile.ts';

interface GroupProps {
  readonly group: ExportGroup;
  readonly onChoose: (action: ExportAction) => void;
}

function Group({ group: { title, actions }, onChoose }: GroupProps) {
  return (
    <li>
      <div role="group" aria-label={title}>
        <span>{title}</span>
        {actions.map((action) => (
          <button
            key={action.kind}
            type="button"
            aria-label={`${title} as ${action.kind.toUpperCase()}`}
            onClick={() => onChoose(action)}
          >
            {action.kind.toUpperCase()}
          </button>
        ))}
      </div>
    </li>
  );
}

/** Arrow keys go from button to button. */
function moveFocus(list: HTMLElement | null, key: string): boolean {
  const buttons = [...(list?.querySelectorAll<HTMLButtonElement>('button') ?? [])];
  const at = buttons.findIndex((button) => button === document.activeElement);
  const next = {
    ArrowDown: at + 1,
    ArrowRight: at + 1,
    ArrowUp: at - 1,
    ArrowLeft: at - 1,
    Home: 0,
    End: buttons.length - 1,
  }[key];
  if (next === undefined || buttons.length === 0) return false;
  buttons[(next + buttons.length) % buttons.length]?.focus();
  return true;
}

interface ExportMenuProps {
  readonly coat: Coat;
  /** lowest and highest value of all compared variants, in the unit of the mapped field */
  readonly sharedRange?: SharedRange;
  /** whether it is mounted because the user has asked for it */
  readonly opensAtOnce?: boolean;
}

export function ExportMenu({ coat, sharedRange, opensAtOnce = false }: ExportMenuProps) {
  const [isOpen, setIsOpen] = useState(opensAtOnce);
  const [news, setNews] = useState('');
  const view = useMapView();
  const units = useUnits();
  const id = useId();
  const opener = useRef<HTMLButtonElement>(null);
  const list = useRef<HTMLUListElement>(null);
  useEffect(() => {
    if (isOpen) list.current?.querySelector('button')?.focus();
  }, [isOpen]);

  const close = (): void => {
    setIsOpen(false);
    opener.current?.focus();
  };
  const choose = async ({ what, kind, make }: ExportAction): Promise<void> => {
    close();
    setNews('');
    const source = { coat, view, units, ...(sharedRange && { sharedRange }) };
    const saved = await saveFile(make(source), exportName(coat.plant.name, what, kind), kind);
    setNews(saved === null ? '' : `Saved as ${saved}`);
  };
  const onKeyDown = (event: KeyboardEvent): void => {
    if (!isOpen) return;
    if (event.key === 'Escape') {
      event.stopPropagation();
      close();
    } else if (moveFocus(list.current, event.key)) event.preventDefault();
  };
  const onBlur = (event: FocusEvent<HTMLDivElement>): void => {
    if (!event.currentTarget.contains(event.relatedTarget)) setIsOpen(false);
  };
  return (
    <div className="export-menu" onKeyDown={onKeyDown} onBlur={onBlur}>
      <button
        ref={opener}
        type="button"
        className="shorter"
        aria-expanded={isOpen}
        aria-controls={`${id}-list`}
        onClick={() => setIsOpen(!isOpen)}
      >
        <Download aria-hidden="true" size={16} /> <span>Export</span> <ChevronDown aria-hidden="true" size={14} />
      </button>
      <ul
        id={`${id}-list`}
        ref={list}
        hidden={!isOpen}
        aria-label="Export"
        onMouseDown={(event) => event.preventDefault()}
      >
        {exportGroups(coat).map((group) => (
          <Group key={group.title} group={group} onChoose={(action) => void choose(action)} />
        ))}
      </ul>
      <span className="visually-hidden" aria-live="polite">
        {news}
      </span>
    </div>
  );
}
