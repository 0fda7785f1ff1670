/** Stands where the design describes no pumping system, and offers one to begin with. */
import { Plus } from 'lucide-react';
import { useState } from 'react';
import { changeDesign } from '../../../panels/plant/formEdits.ts';
import { withValue } from '../../../state/edits/path.ts';
import { STARTING_SYSTEM } from './startingSystem.ts';

/** What the system is needed for, such as "The pump-down". */
export function NoSystem({ what }: { readonly what: string }) {
  const [refusal, setRefusal] = useState<string | null>(null);
  const add = (): void =>
    setRefusal(changeDesign('pumping system', (file) => withValue(file, ['vacuum', 'system'], STARTING_SYSTEM)));
  return (
    <section className="panel vacuum-none" aria-label={what}>
      <p>{what} follows from pumps, lines, surfaces and leak. This design describes none of them yet.</p>
      <button type="button" onClick={add}>
        <Plus aria-hidden="true" size={16} /> Begin with a usual system
      </button>
      <p className="quiet">
        A rotary, a Roots and a diffusion pump, a coated wall, a door seal and a small leak: change them into yours.
      </p>
      <p className="field-refusal" aria-live="polite">
        {refusal}
      </p>
    </section>
  );
}
