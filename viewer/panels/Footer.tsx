/** The foot of the page: a hint for the first minute, and the caution that always holds. */
import { Hints } from './home/Hints.tsx';

export function Footer() {
  return (
    <footer>
      <Hints />
      <p>
        Vacuum, kiloamperes, kilovolts, hot metal: local codes and licensed practice come first. Evenfall only advises.
      </p>
    </footer>
  );
}
