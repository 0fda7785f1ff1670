/** Opens what the picture shows, over the picture; closes by Escape, and by a press elsewhere. */
import { SlidersHorizontal } from 'lucide-react';
import { useEffect, useRef, useState, type KeyboardEvent } from 'react';
import { ScenePanel } from './ScenePanel.tsx';

export function ShowButton() {
  const [isOpen, setOpen] = useState(false);
  const root = useRef<HTMLDivElement>(null);
  const button = useRef<HTMLButtonElement>(null);
  useEffect(() => {
    if (!isOpen) return;
    const pressed = ({ target }: PointerEvent): void => {
      if (!(target instanceof Node) || !root.current?.contains(target)) setOpen(false);
    };
    document.addEventListener('pointerdown', pressed, true);
    return () => document.removeEventListener('pointerdown', pressed, true);
  }, [isOpen]);
  const onKeyDown = (event: KeyboardEvent): void => {
    if (event.key !== 'Escape' || !isOpen) return;
    event.stopPropagation();
    setOpen(false);
    button.current?.focus();
  };
  return (
    <div className="scene-show" ref={root} onKeyDown={onKeyDown}>
      <button
        ref={button}
        type="button"
        aria-expanded={isOpen}
        aria-controls="scene-panel"
        onClick={() => setOpen(!isOpen)}
      >
        <SlidersHorizontal aria-hidden="true" size={16} /> Show
      </button>
      {isOpen && (
        <div id="scene-panel" className="scene-panel" role="group" aria-label="What the picture shows">
          <ScenePanel />
        </div>
      )}
    </div>
  );
}
