/** A dialog over the page; it is there as long as it is mounted. */
import { X } from 'lucide-react';
import { useEffect, useId, useRef, type ReactNode } from 'react';

interface DialogProps {
  readonly title: string;
  readonly onClose: () => void;
  readonly children: ReactNode;
}

export function Dialog({ title, onClose, children }: DialogProps) {
  const dialog = useRef<HTMLDialogElement>(null);
  const id = useId();
  useEffect(() => {
    if (dialog.current && !dialog.current.open) dialog.current.showModal();
  }, []);
  return (
    <dialog ref={dialog} className="plant-dialog" aria-labelledby={id} onClose={onClose}>
      <div className="dialog-head">
        <h2 id={id}>{title}</h2>
        <button type="button" onClick={() => dialog.current?.close()}>
          <X aria-hidden="true" size={16} /> Close
        </button>
      </div>
      <div className="dialog-body">{children}</div>
    </dialog>
  );
}
