/** All variants in a table, and two of them side by side. Loaded when it is first looked at. */
import { DifferenceMap } from '../../charts/DifferenceMap.tsx';
import { ProfileCompare } from '../../charts/ProfileCompare.tsx';
import { CompareView, type ComparedCoat } from './CompareView.tsx';
import { VariantsPanel } from './VariantsPanel.tsx';

/** B − A: positive where the change made the coat thicker. */
const difference = (a: ComparedCoat, b: ComparedCoat) => (
  <DifferenceMap a={b.coat} b={a.coat} nameA={b.name} nameB={a.name} />
);
const profiles = (a: ComparedCoat, b: ComparedCoat) => (
  <ProfileCompare a={a.coat} b={b.coat} nameA={a.name} nameB={b.name} />
);

export function Comparing() {
  return (
    <div className="comparing">
      <VariantsPanel />
      <CompareView differenceMap={difference} profiles={profiles} />
    </div>
  );
}
