/** The keys of the page as a whole, and the dialog that lists all keys. */
import { useMemo, useState } from 'react';
import { chooseFiles } from '../../state/fileDialogs.ts';
import { pinCurrent } from '../../state/variants/variantStore.ts';
import { KeysHelp } from './KeysHelp.tsx';
import { useGlobalKeys, type KeyBinding } from './useGlobalKeys.ts';

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
      { keys: '?', does: 'Show all keys', run: () => setHelpOpen(true) },
    ],
    [onOpen],
  );
  useGlobalKeys('Everywhere', bindings);
  return <KeysHelp isOpen={isHelpOpen} onClose={() => setHelpOpen(false)} />;
}
