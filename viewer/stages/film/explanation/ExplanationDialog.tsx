/** The one-page explanation: looked at, saved, printed. */
import { FileDown, Printer } from 'lucide-react';
import { useEffect, useState } from 'react';
import type { Coat } from '../../../../engine/index.ts';
import { textFile } from '../../../export/fileKinds.ts';
import { exportName, saveFile } from '../../../export/saveFile.ts';
import { Dialog } from '../../../panels/plant/Dialog.tsx';
import { useVariants } from '../../../state/variants/variantStore.ts';
import { announce } from '../../../state/variants/announcement.ts';
import './explanation.css';
import { makePage, type ExplanationPage } from './makePage.ts';
import { printSheet } from './printSheet.ts';
import { Sheet } from './Sheet.tsx';

interface ExplanationDialogProps {
  readonly coat: Coat;
  readonly onClose: () => void;
}

type Made = { readonly page: ExplanationPage } | { readonly failure: string } | null;

/** Of today, in the reader's own way of writing it. */
const today = (): string => new Date().toLocaleDateString(undefined, { dateStyle: 'long' });

function Actions({ coat, page }: { readonly coat: Coat; readonly page: ExplanationPage }) {
  const save = async (): Promise<void> => {
    const content = Promise.resolve(textFile(page.html, 'html'));
    const saved = await saveFile(content, exportName(coat.plant.name, 'explained', 'html'), 'html');
    if (saved !== null) announce(`Saved as ${saved}.`);
  };
  return (
    <>
      <button type="button" onClick={() => void save()}>
        <FileDown aria-hidden="true" size={16} /> Save as a page
      </button>
      <button type="button" onClick={() => printSheet(page.html)}>
        <Printer aria-hidden="true" size={16} /> Print on one sheet
      </button>
    </>
  );
}

export function ExplanationDialog({ coat, onClose }: ExplanationDialogProps) {
  const [made, setMade] = useState<Made>(null);
  const variants = useVariants((state) => state.variants);
  useEffect(() => {
    let isWanted = true;
    makePage(coat, today()).then(
      (page) => isWanted && setMade({ page }),
      (error: unknown) => isWanted && setMade({ failure: error instanceof Error ? error.message : String(error) }),
    );
    return () => {
      isWanted = false;
    };
  }, [coat, variants]);
  return (
    <Dialog title="The coat on one page" onClose={onClose}>
      <div className="explanation-actions">
        {made && 'page' in made && <Actions coat={coat} page={made.page} />}
        <p className="quiet">
          {variants.length === 0
            ? 'Pin variants on the Layout stage to have them compared here.'
            : `Compared with ${variants.length === 1 ? 'the pinned variant' : `${variants.length} pinned variants`}.`}
        </p>
      </div>
      {made === null && <p role="status">Writing the page …</p>}
      {made && 'failure' in made && <p role="alert">The page could not be written: {made.failure}</p>}
      {made && 'page' in made && <Sheet html={made.page.html} label={made.page.question} />}
    </Dialog>
  );
}
