/** Speaks to screen readers what has just happened. */
import { useAnnouncement } from '../../state/variants/announcement.ts';

/** Added to every second sentence, so that the same one said again is a change. */
const SILENT = '\u00a0';

export function Announcer() {
  const { text, count } = useAnnouncement();
  return (
    <div className="visually-hidden" role="status" aria-label="What has just happened">
      {text}
      {count % 2 === 0 ? '' : SILENT}
    </div>
  );
}
