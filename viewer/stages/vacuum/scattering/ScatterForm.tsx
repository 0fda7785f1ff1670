/** Starts and ends the following of atoms, and says how far it has come. */
import { Play, X } from 'lucide-react';
import { useId } from 'react';
import { useResult } from '../../../state/resultStore.ts';
import { useDesign } from '../../../state/designStore.ts';
import { EditField } from '../../../panels/EditField.tsx';
import { QuantityField } from '../../../panels/QuantityField.tsx';
import { useVacuumView } from '../vacuumView.ts';
import { cancelScatter, runShot, runSweep, useScatter } from './scatterStore.ts';

/** Errors that can be asked for. */
const ERRORS = [0.001, 0.2] as const;
const MOST_ATOMS = 100_000_000;

/** A whole number from 0 on; answers why a text is none. */
function wholeNumber(text: string, most: number, take: (value: number) => void): string | null {
  const value = Number(text);
  if (!/^\d+$/.test(text) || value > most) return `expected a whole number up to ${most}; found "${text}"`;
  take(value);
  return null;
}

function Progress() {
  const id = useId();
  const { job, share } = useScatter();
  const done = Math.round(100 * share);
  return (
    <div className="vacuum-running">
      <label htmlFor={id}>{job === 'sweep' ? 'Sweeping pressures' : 'Following atoms'}</label>
      <progress id={id} max={100} value={done} />
      <span className="number">{done} %</span>
      <button type="button" onClick={cancelScatter}>
        <X aria-hidden="true" size={16} /> Cancel
      </button>
    </div>
  );
}

export function ScatterForm() {
  const { job, notice } = useScatter();
  const { scatterError, scatterAtoms, scatterSeed } = useVacuumView();
  const coat = useResult((state) => state.coat);
  const plant = useDesign((state) => state.current.plant);
  const isReady = coat !== null && coat.plant === plant && job === null;
  const settings = { wantedError: scatterError, mostAtoms: scatterAtoms, seed: scatterSeed };
  return (
    <section className="panel vacuum-scatter" aria-label="Follow atoms">
      <h2>Follow atoms</h2>
      <QuantityField
        label="Stop at this error"
        dimension="fraction"
        unit="%"
        value={scatterError}
        range={ERRORS}
        onChange={(value) => void useVacuumView.setState({ scatterError: value })}
      />
      <EditField
        label="Atoms at most"
        value={String(scatterAtoms)}
        onCommit={(text) =>
          wholeNumber(text, MOST_ATOMS, (value) => useVacuumView.setState({ scatterAtoms: Math.max(1, value) }))
        }
      />
      <EditField
        label="Seed"
        value={String(scatterSeed)}
        onCommit={(text) => wholeNumber(text, 2 ** 32 - 1, (value) => useVacuumView.setState({ scatterSeed: value }))}
      />
      <div className="vacuum-run">
        <button type="button" disabled={!isReady} onClick={() => coat && void runShot(coat, settings)}>
          <Play aria-hidden="true" size={16} /> Follow atoms
        </button>
        <button type="button" disabled={!isReady} onClick={() => coat && void runSweep(coat, settings)}>
          <Play aria-hidden="true" size={16} /> Sweep pressures
        </button>
      </div>
      {job !== null && <Progress />}
      <p className="quiet" role="status">
        {notice}
      </p>
    </section>
  );
}
