/** One row of the tree. */
import { Ban, ChevronDown, ChevronRight, Plus } from 'lucide-react';
import type { CSSProperties, MouseEvent } from 'react';
import { RenameField } from './RenameField.tsx';
import { ADDS, type TreeRow } from './treeRows.ts';

interface TreeRowViewProps {
  readonly row: TreeRow;
  readonly id: string;
  readonly isActive: boolean;
  readonly isSelected: boolean;
  readonly isRenaming: boolean;
  readonly top: number;
  readonly onPress: (event: MouseEvent) => void;
  readonly onToggle: () => void;
  readonly onRename: () => void;
  readonly onAdd: () => void;
  readonly say: (refusal: string | null) => void;
}

export function TreeRowView({ row, id, isActive, isSelected, isRenaming, top, ...does }: TreeRowViewProps) {
  const { part, branch, label, detail, isOutOfUse, isOpen, level } = row;
  const style = { top, '--level': level } as CSSProperties;
  const Chevron = isOpen ? ChevronDown : ChevronRight;
  return (
    <div
      id={id}
      role="treeitem"
      className="tree-row"
      style={style}
      aria-level={level}
      aria-posinset={row.position}
      aria-setsize={row.siblings}
      aria-expanded={isOpen}
      aria-selected={part ? isSelected : undefined}
      aria-label={detail === '' ? label : `${label}, ${detail}`}
      data-active={isActive || undefined}
      data-branch={branch ?? undefined}
      data-out-of-use={isOutOfUse || undefined}
      onClick={does.onPress}
      onDoubleClick={does.onRename}
    >
      <span
        className="tree-chevron"
        aria-hidden="true"
        onClick={(event) => {
          event.stopPropagation();
          if (isOpen !== undefined) does.onToggle();
        }}
      >
        {isOpen !== undefined && <Chevron size={14} />}
      </span>
      {isRenaming && part ? (
        <RenameField part={part} label={label} say={does.say} />
      ) : (
        <span className="tree-label">{label}</span>
      )}
      {isOutOfUse && <Ban aria-hidden="true" size={12} className="tree-ban" />}
      <span className="tree-detail">{detail}</span>
      {branch && ADDS[branch] && (
        <span
          className="tree-plus"
          aria-hidden="true"
          title={`Add to ${label.toLowerCase()} (Insert)`}
          onClick={(event) => {
            event.stopPropagation();
            does.onAdd();
          }}
        >
          <Plus size={14} />
        </span>
      )}
    </div>
  );
}
