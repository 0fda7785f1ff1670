/** A measured emission: intensity against angle, in rows of two. */
import { Plus, Trash2 } from 'lucide-react';
import { useState } from 'react';
import { parseQuantity } from '../../../../engine/index.ts';
import type { Emission } from '../../../state/edits/changeKind.ts';
import type { Path } from '../../../state/edits/path.ts';
import { useForm } from './formContext.ts';
import { fieldsOf, FORMS } from './readSchema.ts';
import { useShared, VARIOUS } from './useValues.ts';

type Table = Extract<Emission, { law: 'table' }>;

const emission = fieldsOf(FORMS.type).find(({ key }) => key === 'emission');
const column = (key: string) => {
  const list = fieldsOf(emission, 'table').find((field) => field.key === key);
  return list?.kind === 'list' ? list.item : undefined;
};
const [ANGLE, INTENSITY] = [column('angles'), column('intensities')];

/** An angle half way to the next one, or half way to 180° behind the last. */
function angleAfter(angles: readonly string[], i: number): string {
  const degrees = (text: string | undefined): number => {
    const parsed = parseQuantity(text, 'angle');
    return parsed.ok ? (parsed.value * 180) / Math.PI : 180;
  };
  return `${Number(((degrees(angles[i]) + degrees(angles[i + 1])) / 2).toFixed(3))} deg`;
}

const withRow = ({ angles, intensities, ...rest }: Table, i: number): Table => ({
  ...rest,
  angles: angles.toSpliced(i + 1, 0, angleAfter(angles, i)),
  intensities: intensities.toSpliced(
    i + 1,
    0,
    ((intensities[i] ?? 0) + (intensities[i + 1] ?? intensities[i] ?? 0)) / 2,
  ),
});

const withoutRow = ({ angles, intensities, ...rest }: Table, i: number): Table => ({
  ...rest,
  angles: angles.toSpliced(i, 1),
  intensities: intensities.toSpliced(i, 1),
});

/** Fewest rows of a table. */
const FEWEST = 2;

export function AngleTable({ path }: { readonly path: Path }) {
  const { Control, change } = useForm();
  const shared = useShared(path);
  const [refusal, setRefusal] = useState<string | null>(null);
  if (!ANGLE || !INTENSITY || shared === VARIOUS)
    return <p className="quiet">Various; select one type to edit its table.</p>;
  const { angles } = shared as Table;
  const edit = (next: (table: Table) => Table): void =>
    setRefusal(change(path, (old) => next(old as Table), 'emission table'));
  return (
    <fieldset className="plant-list" data-help={ANGLE.help}>
      <legend>
        Angles and intensities <small>{angles.length}</small>
      </legend>
      <ol>
        {angles.map((_, i) => (
          // rows have no identity but their place
          <li key={i}>
            <Control field={ANGLE} path={[...path, 'angles', i]} name={`Angle ${i + 1}`} />
            <Control field={INTENSITY} path={[...path, 'intensities', i]} name={`Intensity ${i + 1}`} />
            <button
              type="button"
              className="icon plant-small"
              aria-label={`Add a row after row ${i + 1}`}
              title="Add a row after this one"
              onClick={() => edit((table) => withRow(table, i))}
            >
              <Plus aria-hidden="true" size={14} />
            </button>
            <button
              type="button"
              className="icon plant-small"
              aria-label={`Take out row ${i + 1}`}
              title="Take out this row"
              disabled={angles.length <= FEWEST}
              onClick={() => edit((table) => withoutRow(table, i))}
            >
              <Trash2 aria-hidden="true" size={14} />
            </button>
          </li>
        ))}
      </ol>
      <p className="field-refusal" aria-live="polite">
        {refusal}
      </p>
    </fieldset>
  );
}
