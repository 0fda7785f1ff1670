import { faults } from './faults.ts';

export function BrokenStage() {
  if (faults.isBroken) throw new Error('made to fail by the test');
  return <p>Whole again</p>;
}
