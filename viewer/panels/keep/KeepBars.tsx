/** All bars about keeping, one under the other. */
import { KeepFailureBar } from './KeepFailureBar.tsx';
import { RecoveryBar } from './RecoveryBar.tsx';
import { TabBar } from './TabBar.tsx';
import { UpdateBar } from './UpdateBar.tsx';

export function KeepBars() {
  return (
    <div className="keep-bars">
      <TabBar />
      <RecoveryBar />
      <KeepFailureBar />
      <UpdateBar />
    </div>
  );
}
