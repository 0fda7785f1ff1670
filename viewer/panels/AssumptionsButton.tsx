/** Opens the model's assumptions and the usual cautions; their text is not part of the first view. */
import { BookOpenText } from 'lucide-react';
import { useState } from 'react';
import { useOnDemand } from './useOnDemand.ts';

export function AssumptionsButton() {
  const [isOpen, setOpen] = useState(false);
  const [AssumptionsDialog, ask] = useOnDemand(
    'The assumptions cannot be loaded',
    async () => (await import('./AssumptionsDialog.tsx')).AssumptionsDialog,
  );
  const open = (): void => {
    if (!AssumptionsDialog) ask();
    setOpen(true);
  };
  return (
    <>
      <button type="button" className="short" title="Assumptions and cautions" onClick={open}>
        <BookOpenText aria-hidden="true" size={16} /> <span>Assumptions</span>
      </button>
      {AssumptionsDialog && <AssumptionsDialog isOpen={isOpen} onClose={() => setOpen(false)} />}
    </>
  );
}
