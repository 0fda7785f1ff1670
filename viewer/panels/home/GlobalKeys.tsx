/** The keys of the page as a whole, and the dialog that lists all keys. */
import { useMemo, useState } from 'react';
import { chooseFiles, saveDesign } from '../../state/fileDialogs.ts';
import { announce } from '../../state/variants/announcement.ts';
import { pinCurrent } from '../../state/variants/variantStore.ts';
import { KeysHelp } from './KeysHelp.tsx';
import { toggleOutOfUse } from './outOfUse.ts';
import { useGlobalKeys, type KeyBinding } from './useGlobalKeys.ts';

interface GlobalKeysProps {
  /** saves the design, if the page does so in its own way */
  readonly onSave?: () => void;
  readonly onOpen?: () => void;
}

async function saveAndSay(): Promise<void> {
  const name = await saveDesign();
  if (name !== null) announce(`Saved as ${name}.`);
}

const save = (): void => void saveAndSay();
const open = (): void => void chooseFiles();
const pin = (): void => void pinCurrent();

export function GlobalKeys({ onSave = save, onOpen = open }: GlobalKeysProps) {
  const [isHelpOpen, setHelpOpen] = useState(false);
  const bindings = useMemo(
    (): readonly KeyBinding[] => [
      { keys: 'Ctrl+S', does: 'Save the design', run: onSave },
      { keys: 'Ctrl+O', does: 'Open a design', run: onOpen },
      { keys: 'P', does: 'Pin the current design as a variant', run: pin },
      { keys: 'X', does: 'Take the selected filaments out of use, or back', run: toggleOutOfUse },
      { keys: '?', does: 'Show all keys', run: () => setHelpOpen(true) },
    ],
    [onSave, onOpen],
  );
  useGlobalKeys('Everywhere', bindings);
  return <KeysHelp isOpen={isHelpOpen} onClose={() => setHelpOpen(false)} />;
}
