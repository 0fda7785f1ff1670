/** Headline numbers of the current design and all variants. */
import { ArrowDown, ArrowUp, Star } from 'lucide-react';
import { useState } from 'react';
import { announce } from '../../state/variants/announcement.ts';
import { comparedIds, useVariants } from '../../state/variants/variantStore.ts';
import { useUnits } from '../../state/units.ts';
import { bestRows, COLUMNS, sortedRows, toleranceOf, type Column, type Order } from './columns.ts';
import { useComparedDesigns } from './comparedDesigns.ts';
import { VariantRow } from './VariantRow.tsx';

const AS_PINNED: Order = { key: null, isWorstFirst: false };

const REVERSED = { ascending: 'descending', descending: 'ascending', other: 'other' } as const;

/** Best first, then worst first, then as pinned. */
function nextOrder({ key, isWorstFirst }: Order, column: string): Order {
  if (key !== column) return { key: column, isWorstFirst: false };
  return isWorstFirst ? AS_PINNED : { key: column, isWorstFirst: true };
}

function orderText({ key, isWorstFirst }: Order): string {
  const column = COLUMNS.find((item) => item.key === key);
  return column ? `Sorted by ${column.label}, ${isWorstFirst ? 'worst' : 'best'} first.` : 'In the order of pinning.';
}

interface HeadingProps {
  readonly column: Column;
  readonly unit: string;
  readonly order: Order;
  readonly onOrder: (order: Order) => void;
}

function Heading({ column, unit, order, onOrder }: HeadingProps) {
  const { key, label, explanation, best, bestFirst } = column;
  const isSorted = order.key === key;
  const Arrow = order.isWorstFirst ? ArrowUp : ArrowDown;
  return (
    <th scope="col" aria-sort={isSorted ? (order.isWorstFirst ? REVERSED[bestFirst] : bestFirst) : undefined}>
      <button
        type="button"
        title={`${explanation}; best is ${best}. Sorts the variants.`}
        onClick={() => {
          const next = nextOrder(order, key);
          onOrder(next);
          announce(orderText(next));
        }}
      >
        {label}
        {isSorted && <Arrow aria-hidden="true" size={12} />}
      </button>
      <small>{unit}</small>
    </th>
  );
}

export function VariantTable() {
  const designs = useComparedDesigns();
  const state = useVariants();
  const units = useUnits();
  const [order, setOrder] = useState(AS_PINNED);
  const [current, ...variants] = designs;
  const pair = comparedIds(state);
  const best = new Map(COLUMNS.map((column) => [column.key, bestRows(column, designs)]));
  const showsTolerance = new Set(designs.filter(({ coat }) => coat).map(toleranceOf)).size > 1;
  const rows = current ? [current, ...sortedRows(variants, order)] : [];
  return (
    <div className="variants-scroll" role="region" aria-label="Variants and their numbers" tabIndex={0}>
      <table className="variants-table">
        <caption className="visually-hidden">
          Headline numbers of the current design and of each variant, each with its numerical error
        </caption>
        <thead>
          <tr>
            <th scope="col" className="variant-side">
              A
            </th>
            <th scope="col" className="variant-side">
              B
            </th>
            <th scope="col">Design</th>
            {COLUMNS.map((column) => (
              <Heading key={column.key} column={column} unit={column.unit(units)} order={order} onOrder={setOrder} />
            ))}
            <td />
          </tr>
        </thead>
        <tbody>
          {rows.map((design) => (
            <VariantRow
              key={design.id}
              design={design}
              units={units}
              side={pair?.a === design.id ? 'a' : pair?.b === design.id ? 'b' : null}
              best={new Set(COLUMNS.filter(({ key }) => best.get(key)?.has(design.id)).map(({ key }) => key))}
              showsTolerance={showsTolerance}
              canCompare={pair !== null}
            />
          ))}
        </tbody>
      </table>
      <p className="quiet">
        <Star aria-hidden="true" className="variant-best" size={12} /> best of its column, as far as the numerical
        errors tell. Under each number, its error.
      </p>
    </div>
  );
}
