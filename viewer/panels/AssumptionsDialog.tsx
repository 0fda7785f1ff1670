/** The model's assumptions and the usual cautions, one click away. */
import { X } from 'lucide-react';
import { useEffect, useRef } from 'react';
import { useDesign } from '../state/designStore.ts';
import { CAUTIONS, EMISSION_LAWS, NUMERICS, TRANSPORT, type Assumption } from './assumptions.ts';
import './assumptions.css';

function AssumptionList({ items, inUse }: { readonly items: readonly Assumption[]; readonly inUse?: Set<string> }) {
  return (
    <dl className="assumptions">
      {items.map(({ name, formula, text, source }) => (
        <div key={name}>
          <dt>
            {name} {inUse?.has(name) && <span className="tag">in this design</span>}
          </dt>
          <dd>
            {formula !== undefined && <p className="formula">{formula}</p>}
            <p>{text}</p>
            <p className="quiet">Source: {source}.</p>
          </dd>
        </div>
      ))}
    </dl>
  );
}

interface AssumptionsDialogProps {
  readonly isOpen: boolean;
  readonly onClose: () => void;
}

export function AssumptionsDialog({ isOpen, onClose }: AssumptionsDialogProps) {
  const dialog = useRef<HTMLDialogElement>(null);
  const types = useDesign((state) => state.current.file.filamentTypes);
  useEffect(() => {
    if (isOpen && !dialog.current?.open) dialog.current?.showModal();
    if (!isOpen) dialog.current?.close();
  }, [isOpen]);
  return (
    <dialog ref={dialog} aria-labelledby="assumptions-title" onClose={onClose}>
      <div className="dialog-head">
        <h2 id="assumptions-title">Assumptions and cautions</h2>
        <button type="button" onClick={onClose}>
          <X aria-hidden="true" size={16} /> Close
        </button>
      </div>
      <div className="dialog-body" tabIndex={0} role="region" aria-labelledby="assumptions-title">
        <h3>Cautions</h3>
        <ul>
          {CAUTIONS.map((caution) => (
            <li key={caution}>{caution}</li>
          ))}
        </ul>
        <p>
          <strong>
            Follow local codes and licensed practice; they come before anything shown here. Evenfall advises and does
            not control equipment.
          </strong>
        </p>
        <h3>How vapour leaves a filament</h3>
        <p className="quiet">
          Intensity per steradian for one kilogram; φ from the aimed direction, θ from the coil axis.
        </p>
        <AssumptionList
          items={EMISSION_LAWS}
          inUse={new Set(Object.values(types).map(({ emission }) => emission.law))}
        />
        <h3>How it reaches the mirror</h3>
        <AssumptionList items={TRANSPORT} />
        <h3>How sure the numbers are</h3>
        <AssumptionList items={NUMERICS} />
      </div>
    </dialog>
  );
}
