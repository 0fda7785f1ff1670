/** Stands in for the export menu until it is asked for: its code is not part of the first view. */
import { ChevronDown, Download } from 'lucide-react';
import { useResult } from '../state/resultStore.ts';
import { useOnDemand } from './useOnDemand.ts';

export function ExportButton() {
  const coat = useResult((state) => state.coat);
  const [ExportMenu, ask] = useOnDemand(
    'The export menu cannot be loaded',
    async () => (await import('../export/ExportMenu.tsx')).ExportMenu,
  );
  if (!coat) return null;
  if (ExportMenu) return <ExportMenu coat={coat} opensAtOnce />;
  return (
    <button type="button" className="shorter" aria-expanded={false} onClick={ask}>
      <Download aria-hidden="true" size={16} /> <span>Export</span> <ChevronDown aria-hidden="true" size={14} />
    </button>
  );
}
