/** All keys of the page. */
import { Lightbulb, X } from 'lucide-react';
import { useEffect, useRef } from 'react';
import { showHintsAgain, useHints } from './hintStore.ts';
import './home.css';
import { mergedGroups, useKeyGroups } from './keys.ts';

interface KeysHelpProps {
  readonly isOpen: boolean;
  readonly onClose: () => void;
}

/** "Ctrl+S" as the keys that it is made of; words such as "+ and −" stay whole. */
function Keys({ keys }: { readonly keys: string }) {
  const parts = /^\w+(\+\w+)+$/.test(keys) ? keys.split('+') : [keys];
  return (
    <>
      {parts.map((part, i) => (
        <span key={part}>
          {i > 0 && ' + '}
          <kbd>{part}</kbd>
        </span>
      ))}
    </>
  );
}

export function KeysHelp({ isOpen, onClose }: KeysHelpProps) {
  const dialog = useRef<HTMLDialogElement>(null);
  const groups = useKeyGroups((state) => state.groups);
  const hasDoneHints = useHints((state) => state.done.length > 0);
  useEffect(() => {
    if (isOpen && !dialog.current?.open) dialog.current?.showModal();
    if (!isOpen) dialog.current?.close();
  }, [isOpen]);
  return (
    <dialog ref={dialog} className="keys-help" aria-labelledby="keys-title" onClose={onClose}>
      <div className="dialog-head">
        <h2 id="keys-title">Keys</h2>
        <button type="button" onClick={onClose}>
          <X aria-hidden="true" size={16} /> Close
        </button>
      </div>
      <div className="dialog-body" tabIndex={0} role="region" aria-labelledby="keys-title">
        <p className="quiet">
          While you type in a field, keys belong to the field. On a Mac, the command key stands for Ctrl.
        </p>
        {mergedGroups(groups).map(({ title, entries }) => (
          <section key={title}>
            <h3>{title}</h3>
            <dl className="keys">
              {entries.map(({ keys, does }) => (
                <div key={keys}>
                  <dt>
                    <Keys keys={keys} />
                  </dt>
                  <dd>{does}</dd>
                </div>
              ))}
            </dl>
          </section>
        ))}
        <p>
          <button
            type="button"
            disabled={!hasDoneHints}
            onClick={() => {
              showHintsAgain();
              onClose();
            }}
          >
            <Lightbulb aria-hidden="true" size={16} /> Show the first hints again
          </button>
        </p>
      </div>
    </dialog>
  );
}
