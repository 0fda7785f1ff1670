/** Copies a link that carries the whole design, and says what was copied. */
import { Link } from 'lucide-react';
import { useEffect, useRef, useState } from 'react';
import { copyLink, loadPacking, type CopiedLink } from '../../state/keep/linkActions.ts';
import { refuse } from '../../state/refusal.ts';
import { placeUnder } from './placeUnder.ts';
import './keep.css';

function headOf({ isCopied, fits }: CopiedLink): string {
  if (!fits) return 'This design is too large for a link.';
  return isCopied ? 'Link copied.' : 'The browser does not let the page copy: copy the link from here.';
}

export function CopyLink() {
  const button = useRef<HTMLButtonElement>(null);
  const popover = useRef<HTMLDivElement>(null);
  const [copied, setCopied] = useState<CopiedLink | null>(null);
  const field = useRef<HTMLInputElement>(null);
  const copy = async (): Promise<void> => {
    try {
      setCopied(await copyLink());
    } catch (error) {
      refuse('The link cannot be made', [
        { path: '', message: error instanceof Error ? error.message : String(error) },
      ]);
    }
  };
  // some browsers let a page copy only in the very moment of the press: the packing must be there by then
  const fetchAhead = (): void => void loadPacking().catch(() => undefined);
  useEffect(() => {
    if (!copied) return;
    popover.current?.showPopover();
    if (!copied.isCopied) field.current?.focus(); // selects the link, to be copied by hand
  }, [copied]);
  return (
    <>
      <button
        type="button"
        ref={button}
        className="short"
        title="Copy a link with the whole design"
        onPointerEnter={fetchAhead}
        onFocus={fetchAhead}
        onClick={() => void copy()}
      >
        <Link aria-hidden="true" size={16} /> <span>Copy link</span>
      </button>
      <div
        ref={popover}
        className="keep-popover keep-link"
        popover="auto"
        role="group"
        aria-label="Link to the design"
        onToggle={({ newState, currentTarget }) => {
          if (newState === 'open' && button.current) placeUnder(currentTarget, button.current);
        }}
      >
        <div role="status">
          {copied && (
            <>
              <p>
                <strong>{headOf(copied)}</strong>
              </p>
              <p className={copied.isLong ? 'keep-warning' : 'quiet'}>{copied.remark}</p>
            </>
          )}
        </div>
        {copied?.fits && (
          <input
            ref={field}
            type="text"
            readOnly
            aria-label="The link"
            value={copied.link}
            onFocus={({ currentTarget }) => currentTarget.select()}
          />
        )}
        {copied?.fits && (
          <p className="quiet">
            The design is in the link itself, behind the #: no server gets it or needs to have it.
          </p>
        )}
      </div>
    </>
  );
}
