/** All filament sets. */
import { useDesign } from '../state/designStore.ts';
import { FilamentSetPanel } from './FilamentSetPanel.tsx';

export function FilamentSets() {
  const file = useDesign((state) => state.current.file);
  return (
    <section className="panel" aria-labelledby="filaments-title">
      <h2 id="filaments-title">Filaments</h2>
      <p className="quiet">With unit, such as 34 in; arrow keys step the last digit.</p>
      {file.filaments.map((set, iSet) => (
        // the order of sets does not change, and their names can
        <FilamentSetPanel key={`${iSet} ${set.name}`} set={set} iSet={iSet} />
      ))}
    </section>
  );
}
