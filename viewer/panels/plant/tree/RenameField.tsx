/** A name typed in its row: Enter gives it, Escape leaves it. */
import { useEffect, useRef, useState } from 'react';
import type { Part } from '../../../state/selection.ts';
import { rename } from '../NameField.tsx';
import { useTree } from './treeState.ts';

interface RenameFieldProps {
  readonly part: Part;
  readonly label: string;
  readonly say: (refusal: string | null) => void;
}

export function RenameField({ part, label, say }: RenameFieldProps) {
  const [name, setName] = useState(label);
  const input = useRef<HTMLInputElement>(null);
  const isOver = useRef(false);
  useEffect(() => input.current?.select(), []);
  const close = (): void => {
    if (isOver.current) return;
    isOver.current = true;
    const tree = input.current?.closest<HTMLElement>('[role=tree]');
    useTree.setState({ renaming: null });
    tree?.focus({ preventScroll: true });
  };
  const give = (): void => {
    if (isOver.current) return;
    const refusal = name.trim() === label ? null : rename(part, name);
    say(refusal);
    if (refusal === null) close();
  };
  return (
    <input
      ref={input}
      type="text"
      className="tree-name"
      aria-label={`New name of ${label}`}
      value={name}
      onChange={(event) => setName(event.target.value)}
      onClick={(event) => event.stopPropagation()}
      onDoubleClick={(event) => event.stopPropagation()}
      onBlur={() => {
        // leaving takes the name if it can be had, and keeps the old one otherwise
        if (!isOver.current && name.trim() !== label) say(rename(part, name));
        isOver.current = true;
        useTree.setState({ renaming: null });
      }}
      onKeyDown={(event) => {
        event.stopPropagation();
        if (event.key === 'Enter') give();
        if (event.key === 'Escape') close();
      }}
    />
  );
}
