/** The keys of the page as a whole, and the dialog that lists all keys. */
import { useMemo, useState } from 'react';
import { useDesign } from '../../state/designStore.ts';
import { chooseFiles } from '../../state/fileDialogs.ts';
import { announce } from '../../state/variants/announcement.ts';
import { pinCurrent } from '../../state/variants/variantStore.ts';
import { toggleOutOfUse } from '../plant/tree/treeActions.ts';
import { KeysHelp } from './KeysHelp.tsx';
import { useGlobalKeys, type KeyBinding } from './useGlobalKeys.ts';

function markSelected(): void {
  const refusal = toggleOutOfUse();
  announce(refusal ?? `Changed the ${useDesign.getState().past.at(-1)?.label ?? 'use'}.`);
}

interface GlobalKeysProps {
  /** opens a design, if the page does so in its own way */
  readonly onOpen?: () => void;
}

const open = (): void => void chooseFiles();
const pin = (): void => void pinCurrent();

export function GlobalKeys({ onOpen = open }: GlobalKeysProps) {
  const [isHelpOpen, setHelpOpen] = useState(false);
  const bindings = useMemo(
    (): readonly KeyBinding[] => [
      { keys: 'Ctrl+O', does: 'Open a design', run: onOpen },
      { keys: 'P', does: 'Pin the current design as a variant', run: pin },
      { keys: 'X', does: 'Take what is selected out of use, or back: filaments, sets, feeds', run: markSelected },
      { keys: '?', does: 'Show all keys', run: () => setHelpOpen(true) },
    ],
    [onOpen],
  );
  useGlobalKeys('Everywhere', bindings);
  return <KeysHelp isOpen={isHelpOpen} onClose={() => setHelpOpen(false)} />;
}
