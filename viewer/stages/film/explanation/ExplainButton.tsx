/** Opens the one-page explanation, whose code comes when it is first asked for. */
import { FileText } from 'lucide-react';
import { lazy, Suspense, useState } from 'react';
import type { Coat } from '../../../../engine/index.ts';

const ExplanationDialog = lazy(async () => ({
  default: (await import('./ExplanationDialog.tsx')).ExplanationDialog,
}));

export function ExplainButton({ coat }: { readonly coat: Coat }) {
  const [isOpen, setIsOpen] = useState(false);
  return (
    <>
      <button type="button" className="no-print" onClick={() => setIsOpen(true)}>
        <FileText aria-hidden="true" size={16} /> Explain on one page
      </button>
      {isOpen && (
        <Suspense>
          <ExplanationDialog coat={coat} onClose={() => setIsOpen(false)} />
        </Suspense>
      )}
    </>
  );
}
