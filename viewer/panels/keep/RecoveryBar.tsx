/** Offers the design of an earlier session that lies in no file. */
import { History, RotateCcw } from 'lucide-react';
import { acceptOffer, declineOffer } from '../../state/keep/recovery.ts';
import { useKeep } from '../../state/keep/keepStore.ts';
import { Bar } from './Bar.tsx';
import { momentText } from './momentText.ts';

export function RecoveryBar() {
  const offer = useKeep((state) => state.offer);
  if (!offer) return null;
  return (
    <Bar
      label="Recovery"
      icon={<History aria-hidden="true" size={16} />}
      actions={
        <>
          <button type="button" onClick={() => void acceptOffer()}>
            <RotateCcw aria-hidden="true" size={16} /> Restore
          </button>
          <button type="button" onClick={() => void declineOffer()}>
            Not now
          </button>
        </>
      }
    >
      Restore “{offer.name}” from {momentText(offer.usedAt, Date.now())}? Its last edits are in no file.
    </Bar>
  );
}
