/** All variants: pin, table, open and save. */
import { FolderOpen, Pin, Save, Square, Undo2 } from 'lucide-react';
import { useRef } from 'react';
import { chooseVariants, saveVariants } from '../../state/variants/variantFiles.ts';
import { stopAllVariants } from '../../state/variants/evaluateVariants.ts';
import { MAX_VARIANTS } from '../../state/variants/variantsDocument.ts';
import { bringBack, useVariants } from '../../state/variants/variantStore.ts';
import './compare.css';
import { PinButton } from './PinButton.tsx';
import { VariantTable } from './VariantTable.tsx';

const isUnderWay = ({ phase }: { readonly phase: string }): boolean => phase === 'waiting' || phase === 'computing';

export function VariantsPanel() {
  const { variants, deleted } = useVariants();
  const title = useRef<HTMLHeadingElement>(null);
  const takeBack = (): void => {
    bringBack();
    title.current?.focus(); // the button is gone
  };
  const underWay = variants.filter(isUnderWay).length;
  return (
    <section className="panel variants" aria-labelledby="variants-title">
      <div className="variants-head">
        <h2 id="variants-title" ref={title} tabIndex={-1}>
          Variants{' '}
          <small>
            {variants.length} of {MAX_VARIANTS}
          </small>
        </h2>
        {underWay > 0 && (
          <button type="button" onClick={stopAllVariants}>
            <Square aria-hidden="true" size={14} /> Stop computing {underWay}
          </button>
        )}
        {deleted && variants.length < MAX_VARIANTS && (
          <button key={deleted.variant.id} type="button" autoFocus onClick={takeBack}>
            <Undo2 aria-hidden="true" size={16} /> Bring back {deleted.variant.name}
          </button>
        )}
        <div className="variants-actions">
          <PinButton />
          <button type="button" onClick={() => void chooseVariants()}>
            <FolderOpen aria-hidden="true" size={16} /> Open variants
          </button>
          <button type="button" disabled={variants.length === 0} onClick={() => void saveVariants()}>
            <Save aria-hidden="true" size={16} /> Save variants
          </button>
        </div>
      </div>
      {variants.length === 0 ? (
        <p className="variants-none">
          <Pin aria-hidden="true" size={16} /> Pin the current design, change something, and see here what it brought.
        </p>
      ) : (
        <VariantTable />
      )}
    </section>
  );
}
