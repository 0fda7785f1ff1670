/** What the stage's numbers assume, with formula and source, and the cautions for work on the tank. */
import { GAS_ASSUMPTIONS } from '../../../engine/gas/assumptions.ts';
import { VACUUM_ASSUMPTIONS, VACUUM_CAUTIONS } from '../../../engine/vacuum/assumptions.ts';
import { Cautions } from '../../panels/Cautions.tsx';

interface Note {
  readonly statement: string;
  /** empty where words say it all */
  readonly formula: string;
  readonly source: string;
}

function Assumptions({ title, notes }: { readonly title: string; readonly notes: readonly Note[] }) {
  return (
    <details className="panel vacuum-assumptions">
      <summary>{title}</summary>
      <ul>
        {notes.map(({ statement, formula, source }) => (
          <li key={statement}>
            {statement} {formula !== '' && <code>{formula}</code>} <small>{source}</small>
          </li>
        ))}
      </ul>
    </details>
  );
}

export function ModelNotes() {
  return (
    <>
      <Assumptions title="What the gas’s numbers assume" notes={GAS_ASSUMPTIONS} />
      <Assumptions title="What the pumping’s numbers assume" notes={VACUUM_ASSUMPTIONS} />
      <details className="panel vacuum-assumptions">
        <summary>Cautions for tank, pumps and traps</summary>
        <Cautions title="Before work on the tank" cautions={VACUUM_CAUTIONS} />
      </details>
    </>
  );
}
