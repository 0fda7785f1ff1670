/** Opens the trainer's sheet, whose code comes when it is first asked for. */
import { ClipboardList } from 'lucide-react';
import { lazy, Suspense, useState } from 'react';

const TrainerDialog = lazy(async () => ({ default: (await import('./TrainerDialog.tsx')).TrainerDialog }));

export function TrainerButton() {
  const [isOpen, setIsOpen] = useState(false);
  return (
    <>
      <button type="button" onClick={() => setIsOpen(true)}>
        <ClipboardList aria-hidden="true" size={16} /> Trainer’s sheet
      </button>
      {isOpen && (
        <Suspense>
          <TrainerDialog onClose={() => setIsOpen(false)} />
        </Suspense>
      )}
    </>
  );
}
