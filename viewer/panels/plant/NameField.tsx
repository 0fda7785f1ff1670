/** The name of a part, whose change follows to whatever refers to it. */
import { useDesign } from '../../state/designStore.ts';
import { nameOfPart } from '../../state/edits/parts.ts';
import { renamePart } from '../../state/edits/renamePart.ts';
import type { Part } from '../../state/selection.ts';
import { DraftInput } from './fields/DraftInput.tsx';
import { makeEdit } from './formEdits.ts';

/** Gives a part another name and keeps it selected; answers why not, or null. */
export function rename(part: Part, name: string): string | null {
  const { current } = useDesign.getState();
  const old = nameOfPart(current, part);
  return makeEdit(`name of ${old}`, renamePart(current.file, part, name, current.files));
}

export function NameField({ part }: { readonly part: Part }) {
  const present = useDesign((state) => state.current);
  return (
    <DraftInput
      label="Name"
      help="a name of its own, 1 to 80 characters"
      value={nameOfPart(present, part)}
      onCommit={(text) => rename(part, text)}
    />
  );
}
