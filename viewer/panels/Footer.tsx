/** The foot of the page: a hint for the first minute on the Layout stage, and the caution that always holds. */
import { useStage } from '../stages/stageStore.ts';
import { Hints } from './home/Hints.tsx';

export function Footer() {
  const isLayout = useStage(({ key }) => key === 'layout');
  return (
    <footer>
      {isLayout && <Hints />}
      <p>
        Vacuum, kiloamperes, kilovolts, hot metal: local codes and licensed practice come first. Evenfall only advises.
      </p>
    </footer>
  );
}
