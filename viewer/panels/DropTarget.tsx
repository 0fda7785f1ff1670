/** Lets files be dropped anywhere on the page. */
import { useEffect, useState } from 'react';
import { openFiles } from '../state/openFiles.ts';

const hasFiles = (event: DragEvent): boolean => event.dataTransfer?.types.includes('Files') ?? false;

export function DropTarget() {
  const [isOver, setOver] = useState(false);
  useEffect(() => {
    const over = (event: DragEvent): void => {
      if (!hasFiles(event)) return;
      event.preventDefault();
      setOver(true);
    };
    const left = (event: DragEvent): void => {
      if (event.relatedTarget === null) setOver(false);
    };
    const dropped = (event: DragEvent): void => {
      if (!hasFiles(event)) return;
      event.preventDefault();
      setOver(false);
      void openFiles([...(event.dataTransfer?.files ?? [])]);
    };
    window.addEventListener('dragover', over);
    window.addEventListener('dragleave', left);
    window.addEventListener('drop', dropped);
    return () => {
      window.removeEventListener('dragover', over);
      window.removeEventListener('dragleave', left);
      window.removeEventListener('drop', dropped);
    };
  }, []);
  if (!isOver) return null;
  return <div className="drop-target">Drop a design, with the files that it names</div>;
}
