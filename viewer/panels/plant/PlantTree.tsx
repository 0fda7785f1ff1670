/** The plant as a tree: every part can be found, selected, added, renamed, duplicated and deleted. */
import { useEffect, useId, useMemo, useRef, useState, type MouseEvent } from 'react';
import { useDesign } from '../../state/designStore.ts';
import { hasPart } from '../../state/edits/parts.ts';
import { partKey, selectAll, useSelection } from '../../state/selection.ts';
import { shownQuantity, useUnits } from '../../state/units.ts';
import './plant.css';
import { add } from './tree/treeActions.ts';
import { onTreeKey, startRenaming } from './tree/treeKeys.ts';
import { ADDS, treeRows, type TreeRow } from './tree/treeRows.ts';
import { TreeRowView } from './tree/TreeRowView.tsx';
import { choose, reveal, setOpen, useTree } from './tree/treeState.ts';
import { TreeToolbar } from './tree/TreeToolbar.tsx';
import { bringIntoSight, ROW_HEIGHT, useWindow } from './tree/useWindow.ts';

/** Digits shown of a charge. */
const CHARGE_DIGITS = 4;

/** Takes parts out of the selection that an edit, an undo or another design has taken away. */
function usePresentSelection(): void {
  const present = useDesign((state) => state.current);
  const parts = useSelection((state) => state.parts);
  useEffect(() => {
    const left = parts.filter((part) => hasPart(present, part));
    if (left.length < parts.length) selectAll(left);
  }, [present, parts]);
}

export function PlantTree() {
  usePresentSelection();
  const present = useDesign((state) => state.current);
  const units = useUnits();
  const parts = useSelection((state) => state.parts);
  const { open, active, renaming } = useTree();
  const [refusal, setRefusal] = useState<string | null>(null);
  const tree = useRef<HTMLDivElement>(null);
  const id = useId();
  const rows = useMemo(
    () => treeRows(present, open, (charge) => shownQuantity(units, 'mass', charge, CHARGE_DIGITS)),
    [present, open, units],
  );
  const selected = useMemo(() => new Set(parts.map(partKey)), [parts]);
  const { first, end } = useWindow(tree, rows.length);
  const iActive = Math.max(
    0,
    rows.findIndex(({ key }) => key === active),
  );
  const last = parts.at(-1);

  useEffect(() => {
    if (last) reveal(last);
    setRefusal(null);
  }, [last]);
  useEffect(() => {
    // with the next frame, which lays the page out anyway
    const frame = requestAnimationFrame(() => tree.current && bringIntoSight(tree.current, iActive));
    return () => cancelAnimationFrame(frame);
  }, [iActive]);

  const press = (event: MouseEvent, row: TreeRow): void => {
    tree.current?.focus({ preventScroll: true });
    choose(rows, row, event.shiftKey ? 'range' : event.ctrlKey || event.metaKey ? 'also' : 'alone');
    if (row.part === null && row.isOpen !== undefined) setOpen([row.key], !row.isOpen);
  };
  const shown = rows.map((row, i) => ({ row, i })).filter(({ i }) => (i >= first && i < end) || i === iActive);
  return (
    <section className="panel plant-tree" aria-labelledby={`${id}-title`}>
      <h2 id={`${id}-title`}>Parts</h2>
      <TreeToolbar say={setRefusal} onRename={() => rows[iActive] && startRenaming(rows[iActive])} />
      <div
        ref={tree}
        role="tree"
        className="tree"
        tabIndex={0}
        aria-labelledby={`${id}-title`}
        aria-multiselectable="true"
        aria-activedescendant={`${id}-${iActive}`}
        onKeyDown={(event) => onTreeKey(event, rows, setRefusal)}
      >
        <div className="tree-rows" role="none" style={{ height: rows.length * ROW_HEIGHT }}>
          {shown.map(({ row, i }) => (
            <TreeRowView
              key={row.key}
              row={row}
              id={`${id}-${i}`}
              top={i * ROW_HEIGHT}
              isActive={i === iActive}
              isSelected={selected.has(row.key)}
              isRenaming={renaming === row.key}
              onPress={(event) => press(event, row)}
              onToggle={() => setOpen([row.key], row.isOpen !== true)}
              onRename={() => startRenaming(row)}
              onAdd={() => {
                const kind = row.branch && ADDS[row.branch];
                if (kind) setRefusal(add(kind));
              }}
              say={setRefusal}
            />
          ))}
        </div>
      </div>
      <p className="field-refusal tree-refusal" role="status">
        {refusal}
      </p>
    </section>
  );
}
