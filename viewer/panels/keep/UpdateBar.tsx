/** Says that a new version of the page is ready. */
import { RefreshCw } from 'lucide-react';
import { loadUpdate, useUpdate } from '../../offline/updates.ts';
import { Bar } from './Bar.tsx';

export function UpdateBar() {
  const isReady = useUpdate((state) => state.isReady);
  if (!isReady) return null;
  return (
    <Bar
      label="New version"
      icon={<RefreshCw aria-hidden="true" size={16} />}
      actions={
        <>
          <button type="button" onClick={() => void loadUpdate()}>
            Reload
          </button>
          <button type="button" onClick={() => useUpdate.setState({ isReady: false })}>
            Later
          </button>
        </>
      }
    >
      A new version is ready: reload. The design stays as it is.
    </Bar>
  );
}
