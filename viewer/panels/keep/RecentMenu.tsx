/** The designs that were open last, from a button. */
import { ChevronDown, Clock } from 'lucide-react';
import { useId, useRef, useState, type ToggleEvent } from 'react';
import { listDesigns } from '../../state/keep/database.ts';
import { useKeep } from '../../state/keep/keepStore.ts';
import type { KeptDesign } from '../../state/keep/records.ts';
import { restore } from '../../state/keep/restore.ts';
import { isUnsaved, sortDesigns } from '../../state/keep/retention.ts';
import { momentText } from './momentText.ts';
import { placeUnder } from './placeUnder.ts';
import { useKept } from './useKept.ts';
import './keep.css';

interface DesignListProps {
  readonly designs: readonly KeptDesign[];
  readonly label: string;
  readonly onChosen: () => void;
}

function DesignList({ designs, label, onChosen }: DesignListProps) {
  const present = useKeep((state) => state.designId);
  const open = (id: string): void => {
    onChosen();
    if (id !== present) void restore(id, 'open');
  };
  return (
    <ul className="keep-list" aria-label={label}>
      {designs.map((design) => (
        <li key={design.id}>
          <button type="button" aria-current={design.id === present || undefined} onClick={() => open(design.id)}>
            <span className="keep-label">
              {isUnsaved(design) && (
                <>
                  <span aria-hidden="true">• </span>
                  <span className="visually-hidden">in no file: </span>
                </>
              )}
              {design.name}
            </span>
            <time className="number" dateTime={new Date(design.usedAt).toISOString()}>
              {momentText(design.usedAt, Date.now())}
            </time>
          </button>
        </li>
      ))}
    </ul>
  );
}

export function RecentMenu() {
  const id = useId();
  const button = useRef<HTMLButtonElement>(null);
  const popover = useRef<HTMLDivElement>(null);
  const [isOpen, setOpen] = useState(false);
  const designs = useKept(listDesigns, isOpen);
  const { recent, older } = sortDesigns(designs ?? []);
  const toggled = ({ newState, currentTarget }: ToggleEvent<HTMLDivElement>): void => {
    setOpen(newState === 'open');
    if (newState === 'open' && button.current) placeUnder(currentTarget, button.current);
  };
  const close = (): void => popover.current?.hidePopover();
  return (
    <>
      <button type="button" className="shorter" ref={button} popoverTarget={id}>
        <Clock aria-hidden="true" size={16} /> <span>Recent</span> <ChevronDown aria-hidden="true" size={14} />
      </button>
      <div
        id={id}
        ref={popover}
        className="keep-popover keep-recent"
        popover="auto"
        role="group"
        aria-label="Recent designs"
        onToggle={toggled}
      >
        {recent.length > 0 && <DesignList designs={recent} label="Recent designs" onChosen={close} />}
        {older.length > 0 && (
          <>
            <h3>Older, in no file</h3>
            <DesignList designs={older} label="Older, in no file" onChosen={close} />
          </>
        )}
        {recent.length === 0 ? (
          <p className="quiet">Designs that you open or edit are listed here.</p>
        ) : (
          <p className="quiet">• its last edits are in no file</p>
        )}
      </div>
    </>
  );
}
