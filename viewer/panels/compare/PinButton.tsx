/** Pins the current state as a variant. */
import { Pin } from 'lucide-react';
import { MAX_VARIANTS } from '../../state/variants/variantsDocument.ts';
import { pinCurrent, useVariants } from '../../state/variants/variantStore.ts';

export function PinButton() {
  const count = useVariants((state) => state.variants.length);
  const isFull = count >= MAX_VARIANTS;
  return (
    <button
      type="button"
      aria-keyshortcuts="p"
      disabled={isFull}
      title={
        isFull ? `There are ${MAX_VARIANTS} variants; delete one first` : 'Keep the current design as a variant (P)'
      }
      onClick={() => pinCurrent()}
    >
      <Pin aria-hidden="true" size={16} /> Pin
    </button>
  );
}
