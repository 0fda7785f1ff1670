/** A list whose rows can be edited, added and taken out. */
import { Plus, Trash2 } from 'lucide-react';
import { useState } from 'react';
import { useForm, type ControlProps } from './formContext.ts';
import { withNextItem } from './starts.ts';
import { useShared, VARIOUS } from './useValues.ts';

/** Rows shown at once; more on request. */
const PAGE = 50;

export function ListControl({ field, path, name }: ControlProps) {
  const { Control, change } = useForm();
  const shared = useShared(path);
  const [limit, setLimit] = useState(PAGE);
  const [refusal, setRefusal] = useState<string | null>(null);
  if (field.kind !== 'list') return null;
  const title = name ?? field.label;
  const items = Array.isArray(shared) ? (shared as readonly unknown[]) : [];
  // lists beside a number of loops keep their length
  const hasFixedLength = field.place === 'type.clipsPerLoop';
  const set = (next: (old: readonly unknown[]) => readonly unknown[]): void => {
    const done = (old: unknown): unknown => {
      const list = next(Array.isArray(old) ? (old as unknown[]) : []);
      return list.length === 0 && field.isOptional ? undefined : list;
    };
    setRefusal(change(path, done, title.toLowerCase()));
  };
  return (
    <fieldset className="plant-list" data-help={field.help}>
      {field.label !== '' && (
        <legend>
          {field.label} {items.length > 0 && <small>{items.length}</small>}
        </legend>
      )}
      {shared === VARIOUS && <p className="quiet">Various; select one part to edit its rows.</p>}
      <ol>
        {items.slice(0, limit).map((_, i) => (
          // rows have no identity but their place
          <li key={i}>
            <span className="plant-list-number">{i + 1}</span>
            <Control field={field.item} path={[...path, i]} name={`${title} ${i + 1}`} />
            {!hasFixedLength && items.length > field.min && (
              <button
                type="button"
                className="icon plant-small"
                aria-label={`Take out ${title.toLowerCase()} ${i + 1}`}
                title="Take out this row"
                onClick={() => set((old) => old.toSpliced(i, 1))}
              >
                <Trash2 aria-hidden="true" size={14} />
              </button>
            )}
          </li>
        ))}
      </ol>
      {items.length > limit && (
        <button type="button" onClick={() => setLimit(limit + PAGE)}>
          Show {Math.min(PAGE, items.length - limit)} more of {items.length}
        </button>
      )}
      {!hasFixedLength && shared !== VARIOUS && items.length < field.max && (
        <button
          type="button"
          className="plant-add"
          aria-label={`Add a row to ${title.toLowerCase()}`}
          onClick={() => set((old) => withNextItem(field, old))}
        >
          <Plus aria-hidden="true" size={14} /> Add a row
        </button>
      )}
      <p className="field-refusal" aria-live="polite">
        {refusal}
      </p>
    </fieldset>
  );
}
