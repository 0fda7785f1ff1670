/** One design in the table of variants. */
import type { Units } from '../../state/units.ts';
import { compare, CURRENT, renameVariant } from '../../state/variants/variantStore.ts';
import { COLUMNS, toleranceOf } from './columns.ts';
import type { ComparedDesign } from './comparedDesigns.ts';
import { NameField } from './NameField.tsx';
import { NumberCell } from './NumberCell.tsx';
import { VariantActions, VariantProgress } from './VariantActions.tsx';

interface VariantRowProps {
  readonly design: ComparedDesign;
  readonly units: Units;
  /** which side of the comparison it is on */
  readonly side: 'a' | 'b' | null;
  /** keys of the columns in which it is best */
  readonly best: ReadonlySet<string>;
  readonly showsTolerance: boolean;
  /** whether there is anything to compare with */
  readonly canCompare: boolean;
}

const SIDES = ['a', 'b'] as const;

export function VariantRow({ design, units, side, best, showsTolerance, canCompare }: VariantRowProps) {
  const { id, name, coat, snapshot, phase } = design;
  const isCurrent = id === CURRENT;
  return (
    <tr data-side={side ?? undefined} data-current={isCurrent || undefined} aria-busy={phase === 'computing'}>
      {SIDES.map((item) => (
        <td key={item} className="variant-side">
          <input
            type="radio"
            name={`compare-${item}`}
            aria-label={`Compare ${name} as ${item.toUpperCase()}`}
            checked={side === item}
            disabled={!canCompare}
            onChange={() => compare(item, id)}
          />
        </td>
      ))}
      <th scope="row">
        {isCurrent ? (
          <span className="variant-current">
            {name} <small title={snapshot.file.name}>{snapshot.file.name}</small>
          </span>
        ) : (
          <NameField label={`Name of ${name}`} value={name} onCommit={(text) => renameVariant(id, text)} />
        )}
      </th>
      {coat ? (
        COLUMNS.map((column) => (
          <NumberCell
            key={column.key}
            column={column}
            coat={coat}
            units={units}
            isBest={best.has(column.key)}
            note={column.key === 'inside' && showsTolerance ? toleranceOf(design) : ''}
          />
        ))
      ) : (
        <td className="variant-waits" colSpan={COLUMNS.length}>
          {isCurrent ? 'There is no result yet' : <VariantProgress design={design} />}
        </td>
      )}
      <td>{isCurrent ? null : <VariantActions design={design} />}</td>
    </tr>
  );
}
